import { type BlockTrellis, endAssemblyNames, formatQuantity, type Plan, type UnitSystem } from "../core/index.ts";
import { table } from "./table.ts";
import { wrapped } from "./wrapped.ts";

/** How every block's rows are built, and its wires with tension, sag and a check without a gauge. Empty without rows. */
export function trellisReport(plan: Plan, units: UnitSystem): string {
  const { trellis, rows, project } = plan;
  if (trellis === null || rows === null || rows.rows.length === 0) return "";
  return trellis.blocks
    .map((block, i) => {
      const name = project.blocks.find(({ id }) => id === block.block)?.name ?? block.block;
      return `${structure(name, block, units)}${wires(plan, block, i, units)}${pull(plan, i, units)}`;
    })
    .join("");
}

function structure(name: string, block: BlockTrellis, units: UnitSystem): string {
  const length = (value_m: number) => formatQuantity("length", value_m, units);
  const post = (what: string, { length_m, depth_m }: BlockTrellis["endPost"]) =>
    `${what} ${length(length_m)} long, ${length(depth_m)} of it in the ground`;
  const { tie, brace } = block.end;
  return wrapped(
    [
      `${name}: ${endAssemblyNames[block.end.kind]}`,
      post("end posts", block.endPost),
      post("line posts", block.linePost),
      ...(block.bracePost === null ? [] : [post("brace posts", block.bracePost)]),
      ...(block.stake === null ? [] : [post("stakes", block.stake)]),
      ...(tie === null
        ? []
        : [
            `anchors ${length(tie.anchorOut_m)} out, tied at ${length(tie.height_m)}, ${formatQuantity("angle", tie.angle_deg, units, 0)} from the ground`,
          ]),
      ...(brace === null ? [] : [`braces ${length(brace.inside_m)} into the row at ${length(brace.height_m)}`]),
      ...(block.concreteBags === 0 ? [] : [`${block.concreteBags} bags of concrete a post`]),
    ]
      .join("; ")
      .concat("."),
    "",
  );
}

function wires({ trellis }: Plan, block: BlockTrellis, i: number, units: UnitSystem): string {
  const loads = trellis?.loads.blocks[i]?.wires ?? [];
  if (block.wires.length === 0) return "";
  const force = (value_n: number | undefined) => (value_n === undefined ? "" : formatQuantity("force", value_n, units));
  const short = (value_m: number | undefined) =>
    value_m === undefined ? "" : formatQuantity("length", value_m, units, units === "us" ? 1 : 3);
  const column = (head: string, cells: readonly string[]) => ({ head, cells, isNumber: true as const });
  return table([
    {
      head: "wire",
      cells: block.wires.map(
        ({ wire }) => `${wire.purpose}${wire.isMovable ? ", movable" : ""}${wire.count > 1 ? ` x${wire.count}` : ""}`,
      ),
    },
    column(
      "height",
      block.wires.map(({ height_m }) => formatQuantity("length", height_m, units)),
    ),
    column(
      "thick",
      block.wires.map(({ wire }) => formatQuantity("diameter", wire.diameter_mm, units)),
    ),
    column(
      "tension",
      block.wires.map(({ wire }) => force(wire.tension_n)),
    ),
    column(
      "in the cold",
      block.wires.map((_, w) => force(loads[w]?.coldest_n)),
    ),
    column(
      "of breaking",
      block.wires.map((_, w) => formatQuantity("ratio", loads[w]?.share_ratio ?? 0, units, 0)),
    ),
    column(
      "sag",
      block.wires.map((_, w) => short(loads[w]?.sag_m)),
    ),
    column(
      `${formatQuantity("mass", loads[0]?.check.mass_kg ?? 1, units)} at mid-bay`,
      block.wires.map((_, w) => short(loads[w]?.check.drop_m)),
    ),
  ]);
}

function pull({ trellis }: Plan, i: number, units: UnitSystem): string {
  const end = trellis?.loads.blocks[i]?.end;
  if (end === undefined || end.pull_n === 0) return "";
  const force = (value_n: number) => formatQuantity("force", value_n, units);
  const held =
    end.tie_n === null
      ? end.brace_n === null
        ? ""
        : `; the brace is pressed by ${force(end.brace_n)}`
      : `; the tie-back takes ${force(end.tie_n)}, its anchor is pulled up by ${force(end.anchorUplift_n ?? 0)}`;
  return wrapped(
    `Each end post: ${force(end.pull_n)} as set, ${force(end.coldestPull_n)} in the cold${held}. Size ${end.tie_n === null ? "posts" : "anchors"} by local soil and practice.`,
    "",
  );
}

import { endAssemblyNames } from "./project/end-assembly-names.ts";
import type { Block, Json, JsonObject, Project, TieOffKind } from "./project/project.ts";
import { si } from "./project/si.ts";
import { blockPath, wiresAsWritten } from "./project/wires-as-written.ts";
import { waterWhatIfs } from "./water-what-ifs.ts";
import type { WhatIf } from "./what-if.ts";

/** Sizes closer than this, mm, are one: a ten-thousandth. */
const sameSize_mm = 1e-4;
/** A second fruiting wire hangs this far over the first. Common practice, no source. */
const secondFruiting_m = 0.2032;

/**
 * Changes that people weigh, for one block of a project (coils and the trench for all): how wires end at the end of a row, one fruiting wire or
 * two, thicker or thinner wire, shorter or longer coils, another end assembly, all rows fed at one end, a deeper trench, other emitters, valves and
 * pipes. Those that would change nothing are left out.
 */
export function whatIfs(project: Project, blockId: string): readonly WhatIf[] {
  const block = project.blocks.find(({ id }) => id === blockId);
  if (block === undefined) return [];
  return [
    ...tieOffs(project, block),
    ...fruitingWires(project, block),
    ...gauges(project, block),
    ...coils(project),
    ...ends(project, block),
    ...waterEnds(project, block),
    ...covers(project),
    ...waterWhatIfs(project, block),
  ];
}

const tieOffNames: Readonly<Record<TieOffKind, string>> = {
  gripper: "a wire gripper at the end of every row",
  loop: "a wrapped loop at the end of every row",
  crimp: "a crimped end at the end of every row",
};

function tieOffs(project: Project, { id, trellis }: Block): readonly WhatIf[] {
  return (["gripper", "loop", "crimp"] as const).flatMap((kind) => {
    if (trellis.wires.every((wire) => wire.tieOffEnd.kind === kind)) return [];
    const wires = wiresAsWritten(project, id);
    const isOwn = wires.some((wire) => Object.hasOwn(wire, "tieOffEnd"));
    const edits: (readonly [string, Json])[] = [[blockPath(project, id, "trellis.tieOffEnd"), { kind }]];
    if (isOwn) edits.push([blockPath(project, id, "trellis.wires"), wires.map((wire) => without(wire, "tieOffEnd"))]);
    return [{ id: `${kind}-at-the-end`, name: tieOffNames[kind], edits }];
  });
}

function fruitingWires(project: Project, { id, trellis }: Block): readonly WhatIf[] {
  const written = wiresAsWritten(project, id);
  const fruiting = trellis.wires.flatMap((wire, i) => (wire.purpose === "fruiting" ? [{ wire, i }] : []));
  const lowest = fruiting.reduce<(typeof fruiting)[number] | null>(
    (low, each) => (low === null || each.wire.height_m < low.wire.height_m ? each : low),
    null,
  );
  if (lowest === null) return [];
  const count = fruiting.reduce((sum, { wire }) => sum + wire.count, 0);
  const path = blockPath(project, id, "trellis.wires");
  const kept = written.flatMap((wire, i) =>
    i === lowest.i ? [{ ...wire, count: 1 }] : trellis.wires[i]?.purpose === "fruiting" ? [] : [wire],
  );
  const second = {
    ...written[lowest.i],
    height: Math.round((lowest.wire.height_m + secondFruiting_m) * 10_000) / 10_000,
    count: 1,
  };
  return [
    ...(count > 1 ? [{ id: "one-fruiting-wire", name: "one fruiting wire", edits: [[path, kept] as const] }] : []),
    ...(count === 1
      ? [{ id: "two-fruiting-wires", name: "two fruiting wires", edits: [[path, [...written, second]] as const] }]
      : []),
  ];
}

function gauges(project: Project, { id, trellis }: Block): readonly WhatIf[] {
  const sizes =
    project.units === "us"
      ? (["12 ga", "12.5 ga", "13 ga", "14 ga"] as const)
      : (["2.8 mm", "2.5 mm", "2.2 mm", "2 mm"] as const);
  const path = blockPath(project, id, "trellis.wires");
  return sizes.flatMap((diameter) => {
    const offered_mm = si("diameter", diameter);
    if (trellis.wires.every(({ diameter_mm }) => Math.abs(diameter_mm - offered_mm) < sameSize_mm)) return [];
    const wires = wiresAsWritten(project, id).map((wire) => ({ ...wire, diameter }));
    return [
      { id: `wire-${diameter.replace(" ", "")}`, name: `all wires of ${diameter}`, edits: [[path, wires] as const] },
    ];
  });
}

function coils(project: Project): readonly WhatIf[] {
  const sizes = project.units === "us" ? ["1000 ft", "2000 ft", "4000 ft", "5000 ft"] : ["250 m", "500 m", "1000 m"];
  const [now_m, ...more] = project.materials.wireCoils_m;
  return sizes.flatMap((text) =>
    more.length === 0 && now_m === si("length", text)
      ? []
      : [
          {
            id: `coils-${text.replace(" ", "")}`,
            name: `wire in coils of ${text}`,
            edits: [["materials.wireCoil", text] as const, ["materials.prices", withoutWire(project)] as const],
          },
        ],
  );
}

/** The price list without the sizes of wire, which would go before the coil that is asked for. */
function withoutWire(project: Project): Json {
  const stated = project.document.tautrow?.materials;
  const prices = typeof stated === "object" && stated !== null && "prices" in stated ? stated.prices : null;
  if (!Array.isArray(prices)) return null;
  const entries: readonly Json[] = prices;
  return entries.filter((entry) => {
    const article = typeof entry === "object" && entry !== null && "article" in entry ? entry.article : null;
    return typeof article !== "string" || !article.startsWith("wire-");
  });
}

function ends(project: Project, { id, trellis }: Block): readonly WhatIf[] {
  return (["vertical", "leaning", "h-brace"] as const)
    .filter((kind) => kind !== trellis.endAssembly.kind)
    .map((kind) => ({
      id: `ends-${kind}`,
      name: endAssemblyNames[kind],
      edits: [[blockPath(project, id, "trellis.endAssembly.kind"), kind] as const],
    }));
}

/** No row has a higher number. */
const lastRow = 9999;

/** With a source: every row of the block fed at one end, in place of whichever costs least; pins of other blocks stay. */
function waterEnds(project: Project, { id }: Block): readonly WhatIf[] {
  const { sources, mainLine } = project;
  if (sources.length === 0) return [];
  const isAlready = (end: "start" | "end") =>
    mainLine.pins.some(
      (pin) => pin.end === end && (pin.block ?? id) === id && pin.fromRow <= 1 && pin.toRow >= lastRow,
    );
  const others = mainLine.pins
    .filter(({ block }) => block !== null && block !== id)
    .map(({ block, fromRow, toRow, end }) => ({ block, rows: `${fromRow}-${toRow}`, end }));
  return (["start", "end"] as const).flatMap((end) =>
    isAlready(end)
      ? []
      : [
          {
            id: `water-at-the-${end}`,
            name: `every row fed at its ${end}`,
            edits: [["mainLine.pins", [{ block: id, rows: `1-${lastRow}`, end }, ...others]] as const],
          },
        ],
  );
}

/** Covers of the published steps (usual-cover.ts) that are deeper than the trench is. */
function covers({ sources, trench, units }: Project): readonly WhatIf[] {
  if (sources.length === 0) return [];
  const steps = units === "us" ? ["24 in", "30 in"] : ["60 cm", "75 cm"];
  return steps.flatMap((cover) =>
    si("length", cover) <= Math.max(trench.cover_m, trench.frostDepth_m ?? 0) + 1e-6
      ? []
      : [
          {
            id: `cover-${cover.replace(" ", "")}`,
            name: `${cover} of ground over the pipe`,
            edits: [["trench.cover", cover]],
          },
        ],
  );
}

function without(object: JsonObject, name: string): JsonObject {
  const { [name]: _, ...rest } = object;
  return rest;
}

import { type Phrase, quantity, say } from "../finding.ts";
import type { Plan } from "../plan.ts";
import type { Block, WirePurpose } from "../project/project.ts";
import type { Positions, Row } from "../rows/rows.ts";

/** Something upright at a station of a row. */
export interface Upright {
  readonly station_m: number;
  readonly height_m: number;
}

export interface SidePost extends Upright {
  readonly kind: "end" | "line";
}

export interface SideWire {
  readonly purpose: WirePurpose;
  readonly height_m: number;
  readonly count: number;
  readonly diameter_mm: number;
}

/** A distance to write beside the drawing, from one station to another. */
export interface SideDimension {
  readonly kind: "end-gap" | "vine-spacing" | "bay" | "row";
  readonly from_m: number;
  readonly to_m: number;
  readonly label: Phrase;
}

/** A row seen from its side, standing so that its start is on the left: stations in metres from the start, heights from the ground. */
export interface RowSide {
  readonly row: string;
  readonly length_m: number;
  /** Height of the highest wire, which posts are drawn to; lengths of posts and how deep they stand are not known yet. */
  readonly top_m: number;
  readonly posts: readonly SidePost[];
  readonly stakes: readonly Upright[];
  /** Vines as high as the wire they are trained to. */
  readonly vines: readonly Upright[];
  readonly wires: readonly SideWire[];
  /** From the water end to past the last vine; null in a row without vines. */
  readonly hose: {
    readonly waterEnd: "start" | "end";
    readonly from_m: number;
    readonly to_m: number;
    readonly height_m: number;
  } | null;
  /** Emitters by vine; where exactly they sit is not set in the project, so they are drawn at the vine. */
  readonly emitters: readonly { readonly station_m: number; readonly count: number }[];
  readonly dimensions: readonly SideDimension[];
}

/** Height that is drawn when a block has no wire at all. */
const bareHeight_m = 1;
/** Hose without a wire to hang on lies on the ground. */
const onGround_m = 0;

/** The side of one row of the plan, or null when there is no such row. Gives no findings. */
export function rowSide(plan: Plan, id: string): RowSide | null {
  const { rows, drip, mainline } = plan;
  const i = rows?.rows.findIndex((row) => row.id === id) ?? -1;
  const row = rows?.rows[i];
  const block = plan.project.blocks.find((each) => each.id === row?.block);
  if (!rows || !row || !block) return null;
  const { wires } = block.trellis;
  const top_m = highest(wires, null) ?? bareHeight_m;
  const trained_m = lowest(wires, "fruiting") ?? top_m;
  const stake_m = highest(wires, "fruiting") ?? top_m;
  const vines = stationsOf(rows.vines, i);
  const linePosts = stationsOf(rows.linePosts, i);
  const lateral_m = drip?.rows[i]?.lateral_m ?? 0;
  const waterEnd = mainline?.waterEnd[i] ?? "start";
  const along_m = lateral_m * (row.length_m / row.groundLength_m);
  return {
    row: row.id,
    length_m: row.length_m,
    top_m,
    posts: [
      { kind: "end", station_m: 0, height_m: top_m },
      ...linePosts.map((station_m) => ({ kind: "line" as const, station_m, height_m: top_m })),
      { kind: "end", station_m: row.length_m, height_m: top_m },
    ],
    stakes: stationsOf(rows.stakes, i).map((station_m) => ({ station_m, height_m: stake_m })),
    vines: vines.map((station_m) => ({ station_m, height_m: trained_m })),
    wires: wires.map(({ purpose, height_m, count, diameter_mm }) => ({ purpose, height_m, count, diameter_mm })),
    hose:
      lateral_m === 0
        ? null
        : {
            waterEnd,
            from_m: waterEnd === "start" ? 0 : row.length_m,
            to_m: waterEnd === "start" ? along_m : row.length_m - along_m,
            height_m: highest(wires, "drip") ?? onGround_m,
          },
    emitters:
      block.drip.emittersPerVine === 0
        ? []
        : vines.map((station_m) => ({ station_m, count: block.drip.emittersPerVine })),
    dimensions: dimensionsOf(row, vines, linePosts, block),
  };
}

/** Row length, both end gaps, one vine spacing, and every bay. */
function dimensionsOf(
  row: Row,
  vines: readonly number[],
  linePosts: readonly number[],
  block: Block,
): readonly SideDimension[] {
  const { length_m } = row;
  const [first, second, last] = [vines[0], vines[1], vines.at(-1)];
  const along = (kind: SideDimension["kind"], from_m: number, to_m: number): SideDimension => ({
    kind,
    from_m,
    to_m,
    label: say`${quantity("length", to_m - from_m)}`,
  });
  const posts = [0, ...linePosts, length_m];
  return [
    along("row", 0, length_m),
    ...(first === undefined ? [] : [along("end-gap", 0, first)]),
    ...(first === undefined || second === undefined
      ? []
      : [along("vine-spacing", first, first + block.rows.vineSpacing_m)]),
    ...(last === undefined ? [] : [along("end-gap", last, length_m)]),
    ...posts.slice(1).map((to_m, n) => along("bay", Number(posts[n]), to_m)),
  ];
}

function stationsOf({ offsets, station_m }: Positions, i: number): readonly number[] {
  return [...station_m.slice(offsets[i] ?? 0, offsets[i + 1] ?? 0)];
}

function heights(wires: Block["trellis"]["wires"], purpose: WirePurpose | null): readonly number[] {
  return wires
    .filter((wire) => wire.count > 0 && (purpose === null || wire.purpose === purpose))
    .map(({ height_m }) => height_m);
}

function highest(wires: Block["trellis"]["wires"], purpose: WirePurpose | null): number | null {
  const all = heights(wires, purpose);
  return all.length === 0 ? null : Math.max(...all);
}

function lowest(wires: Block["trellis"]["wires"], purpose: WirePurpose | null): number | null {
  const all = heights(wires, purpose);
  return all.length === 0 ? null : Math.min(...all);
}

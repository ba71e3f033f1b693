import { flatGround } from "../ground/elevation.ts";
import type { Plan } from "../plan.ts";
import type { WirePurpose } from "../project/project.ts";
import type { Positions } from "../rows/rows.ts";
import { reachPerHeight } from "../trellis/end-assembly.ts";
import type { BlockTrellis, HungWire, PostLayout } from "../trellis/trellis.ts";
import { type SideDimension, sideDimensions } from "./side-dimensions.ts";
import { type SideEnd, sideEnd } from "./side-ends.ts";
import { type SideGround, sideGround } from "./side-ground.ts";
import { type SideWire, sagFactor, sideWire } from "./side-wires.ts";

/** Something upright at a station of a row; heights are over the ground at its foot. */
export interface Upright {
  readonly station_m: number;
  readonly height_m: number;
}

export interface SideStake extends Upright {
  readonly depth_m: number;
}

export interface SidePost extends SideStake {
  readonly kind: "end" | "line" | "brace";
  /** As bought. */
  readonly length_m: number;
  readonly diameter_mm: number;
  /** How far along the row it goes for every metre up, below 0 towards the start. */
  readonly lean: number;
}

/** A row seen from its side, standing so that its start is on the left: stations in metres from the start, heights from the ground. */
export interface RowSide {
  readonly row: string;
  readonly length_m: number;
  readonly ground: SideGround;
  /** Height of the highest post over its foot, and how deep the deepest stands. */
  readonly top_m: number;
  readonly deepest_m: number;
  /** Outermost stations of all that is drawn: anchors and leaning tops stand outside the row. */
  readonly from_m: number;
  readonly to_m: number;
  /** In the order they are met from the start. */
  readonly posts: readonly SidePost[];
  readonly ends: readonly SideEnd[];
  readonly stakes: readonly SideStake[];
  /** Vines as high as the wire they are trained to. */
  readonly vines: readonly Upright[];
  readonly wires: readonly SideWire[];
  /** How many times too large sag is drawn, so that it is seen. */
  readonly sagFactor: number;
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

/** Hose without a wire to hang on lies on the ground. */
const onGround_m = 0;

/** The side of one row of the plan, or null when there is no such row. Gives no findings. */
export function rowSide(plan: Plan, id: string): RowSide | null {
  const { rows, drip, mainline, trellis, ground } = plan;
  const i = rows?.rows.findIndex((row) => row.id === id) ?? -1;
  const row = rows?.rows[i];
  const block = plan.project.blocks.find((each) => each.id === row?.block);
  const b = trellis?.blocks.findIndex((each) => each.block === row?.block) ?? -1;
  const structure = trellis?.blocks[b];
  if (!rows || !row || !block || !trellis || !structure) return null;
  const { length_m } = row;
  const vines = stationsOf(rows.vines, i);
  const linePosts = stationsOf(rows.linePosts, i);
  const posts = sidePosts(structure, reachPerHeight(block.trellis.endAssembly), linePosts, length_m);
  const ends = [sideEnd("start", length_m, structure.end), sideEnd("end", length_m, structure.end)];
  const wires = structure.wires.map((wire, w) =>
    sideWire(wire, trellis.loads.blocks[b]?.wires[w], linePosts, length_m),
  );
  const places = [
    ...posts.flatMap(({ station_m, lean, height_m, depth_m }) => [
      station_m + lean * height_m,
      station_m - lean * depth_m,
    ]),
    ...ends.flatMap(({ tie }) => (tie === null ? [] : [tie.to_m])),
  ];
  const [from_m, to_m] = [Math.min(...places), Math.max(...places)];
  const trained_m = lowest(structure.wires, "fruiting") ?? structure.linePost.top_m;
  const lateral_m = drip?.rows[i]?.lateral_m ?? 0;
  const waterEnd = mainline?.waterEnd[i] ?? "start";
  const along_m = lateral_m * (length_m / row.groundLength_m);
  const { stake } = structure;
  return {
    row: row.id,
    length_m,
    ground: sideGround(ground?.elevation ?? flatGround, row, from_m, to_m),
    top_m: Math.max(...posts.map(({ height_m }) => height_m), stake?.top_m ?? 0),
    deepest_m: Math.max(...posts.map(({ depth_m }) => depth_m), stake?.depth_m ?? 0),
    from_m,
    to_m,
    posts,
    ends,
    stakes:
      stake === null
        ? []
        : stationsOf(rows.stakes, i).map((station_m) => ({
            station_m,
            height_m: stake.top_m,
            depth_m: stake.depth_m,
          })),
    vines: vines.map((station_m) => ({ station_m, height_m: trained_m })),
    wires,
    sagFactor: sagFactor(wires),
    hose:
      lateral_m === 0
        ? null
        : {
            waterEnd,
            from_m: waterEnd === "start" ? 0 : length_m,
            to_m: waterEnd === "start" ? along_m : length_m - along_m,
            height_m: highest(structure.wires, "drip") ?? onGround_m,
          },
    emitters:
      block.drip.emittersPerVine === 0
        ? []
        : vines.map((station_m) => ({ station_m, count: block.drip.emittersPerVine })),
    dimensions: sideDimensions(length_m, vines, linePosts, block.rows.vineSpacing_m, ends),
  };
}

function sidePosts(
  { endPost, linePost, bracePost, end }: BlockTrellis,
  outward: number,
  linePosts: readonly number[],
  length_m: number,
): readonly SidePost[] {
  const inside_m = end.brace?.inside_m ?? 0;
  const post = (kind: SidePost["kind"], station_m: number, layout: PostLayout, lean: number): SidePost => ({
    kind,
    station_m,
    height_m: layout.top_m,
    depth_m: layout.depth_m,
    length_m: layout.length_m,
    diameter_mm: layout.diameter_mm ?? 0,
    lean,
  });
  const posts = [
    post("end", 0, endPost, -outward),
    ...(bracePost === null ? [] : [post("brace", inside_m, bracePost, 0)]),
    ...linePosts.map((station_m) => post("line", station_m, linePost, 0)),
    ...(bracePost === null ? [] : [post("brace", length_m - inside_m, bracePost, 0)]),
    post("end", length_m, endPost, outward),
  ];
  return posts.sort((a, b) => a.station_m - b.station_m);
}

function stationsOf({ offsets, station_m }: Positions, i: number): readonly number[] {
  return [...station_m.slice(offsets[i] ?? 0, offsets[i + 1] ?? 0)];
}

function heights(wires: readonly HungWire[], purpose: WirePurpose): readonly number[] {
  return wires.filter(({ wire }) => wire.purpose === purpose).map(({ height_m }) => height_m);
}

function highest(wires: readonly HungWire[], purpose: WirePurpose): number | null {
  const all = heights(wires, purpose);
  return all.length === 0 ? null : Math.max(...all);
}

function lowest(wires: readonly HungWire[], purpose: WirePurpose): number | null {
  const all = heights(wires, purpose);
  return all.length === 0 ? null : Math.min(...all);
}

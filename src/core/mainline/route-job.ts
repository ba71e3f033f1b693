import type { Ground, Rings } from "../ground/ground.ts";
import { forEachEdge, planeRings } from "../ground/outlines.ts";
import type { PlanePoint } from "../plane/coordinate.ts";
import type { Frame } from "../plane/frame.ts";
import type { Block, FeatureKey, MainLineSettings, Project, Shape } from "../project/project.ts";
import type { Row, Rows } from "../rows/rows.ts";

/** What the route of the main line depends on: plain data in plane metres, so that it can be worked out beside the page. */
export interface RouteJob {
  readonly rows: RouteRows;
  readonly barriers: Barriers;
  readonly sources: readonly RouteSource[];
  /** Lines that the person drew, x and y in turn. */
  readonly drawn: readonly Float64Array[];
  /** Least distance to posts, anchors and rows. */
  readonly postDistance_m: number;
  /** What a crossing counts, as so much more trench. */
  readonly crossingAs_m: number;
}

/** The rows of the plan in their order, as parallel arrays. */
export interface RouteRows {
  /** End posts: x and y of the start, x and y of the end. */
  readonly posts: Float64Array;
  /** Number of the block, and of the line within it. */
  readonly block: Int32Array;
  readonly line: Int32Array;
  readonly spacing_m: Float64Array;
  /** How far past its end post the trench crosses the row's line; below 0 on the row's own side. */
  readonly lane_m: Float64Array;
  /** How far past the end post something of the row stands: its anchor. */
  readonly reach_m: Float64Array;
  /** 0: either end may meet the water; 1: the start must; 2: the end must. */
  readonly pin: Uint8Array;
}

/** Straight pieces that the middle of the trench keeps its distance from, as parallel arrays. */
export interface Barriers {
  /** x1, y1, x2, y2 of each; a point is a piece without length. */
  readonly xy: Float64Array;
  readonly distance_m: Float64Array;
  /** Index into `features`; -1 for the outline of a parcel. */
  readonly feature: Int32Array;
  /** Number of the parcel outline it is part of; -1 for a feature's. */
  readonly outline: Int32Array;
  readonly features: readonly BarrierFeature[];
}

export interface BarrierFeature {
  readonly key: FeatureKey;
  readonly name: string | null;
  /** May be crossed, square to it. */
  readonly isCrossable: boolean;
  /** Its areas: nothing runs inside them but a crossing. */
  readonly areas: readonly Rings[];
}

export interface RouteSource {
  readonly feature: FeatureKey;
  readonly name: string | null;
  readonly xy: PlanePoint;
}

/** The job of a plan; null while no source is drawn or there are no rows. */
export function routeJob(
  rows: Rows,
  ground: Ground,
  project: Pick<Project, "blocks" | "sources" | "mainLines" | "keepOuts" | "mainLine">,
): RouteJob | null {
  const { sources, mainLine } = project;
  if (sources.length === 0 || rows.rows.length === 0) return null;
  const { frame } = ground;
  return {
    rows: routeRows(rows, project.blocks, mainLine),
    barriers: barriersOf(ground, project),
    sources: sources
      .map(({ key, name, at }) => ({ feature: key, name, xy: frame.toPlane(at) }))
      .filter(({ feature }) => mainLine.source === null || feature === mainLine.source),
    drawn: project.mainLines.map(({ line }) => Float64Array.from(line.flatMap((at) => [...frame.toPlane(at)]))),
    postDistance_m: mainLine.postDistance_m,
    crossingAs_m: crossingAs_m(mainLine),
  };
}

/** A priced crossing counts as the trench that the same money digs. */
function crossingAs_m({ crossingPrice, trenchPrice_pm, crossingAs_m: usual_m }: MainLineSettings): number {
  return crossingPrice === null || trenchPrice_pm === null || trenchPrice_pm === 0
    ? usual_m
    : crossingPrice / trenchPrice_pm;
}

function routeRows({ rows }: Rows, blocks: readonly Block[], settings: MainLineSettings): RouteRows {
  const number = new Map(blocks.map(({ id }, i) => [id, i]));
  const blockOf = (row: Row): Block => {
    const block = blocks[number.get(row.block) ?? -1];
    if (block === undefined) throw new Error(`row ${row.id} is of block ${row.block}, which the project does not have`);
    return block;
  };
  return {
    posts: Float64Array.from(rows.flatMap(({ start, end }) => [...start, ...end])),
    block: Int32Array.from(rows, ({ block }) => number.get(block) ?? -1),
    line: Int32Array.from(rows, (row) => row.number),
    spacing_m: Float64Array.from(rows, (row) => blockOf(row).rows.rowSpacing_m),
    lane_m: Float64Array.from(rows, (row) => lane_m(blockOf(row), settings)),
    reach_m: Float64Array.from(rows, (row) => reach_m(blockOf(row))),
    pin: Uint8Array.from(rows, (row) => pinOf(row, settings)),
  };
}

const withoutAnchor: readonly string[] = ["h-brace", "slant-brace", "inside-brace", "single"];

/** How far past the end post the anchor sits; 0 where the end has none. */
export function reach_m({ rows, trellis }: Pick<Block, "rows" | "trellis">): number {
  return withoutAnchor.includes(trellis.endAssembly.kind) ? 0 : rows.anchorOut_m;
}

/** Half-way between first vine and end post, half-way between end post and anchor, or past the anchor by the least distance. */
function lane_m(block: Block, { lane, postDistance_m }: MainLineSettings): number {
  switch (lane) {
    case "inside":
      return -block.rows.endGap_m / 2;
    case "between":
      return reach_m(block) / 2;
    case "beyond":
      return reach_m(block) + postDistance_m;
    default:
      return lane satisfies never;
  }
}

function pinOf({ block, number }: Row, { pins }: MainLineSettings): number {
  const pin = pins.find((each) => {
    return (each.block === null || each.block === block) && number >= each.fromRow && number <= each.toRow;
  });
  if (pin === undefined) return 0;
  return pin.end === "start" ? 1 : 2;
}

function barriersOf(ground: Ground, { keepOuts, mainLine }: Pick<Project, "keepOuts" | "mainLine">): Barriers {
  const xy: number[] = [];
  const distance_m: number[] = [];
  const feature: number[] = [];
  const outline: number[] = [];
  const features: BarrierFeature[] = [];
  const add = (piece: readonly number[], keep_m: number, of: number, parcel: number): void => {
    xy.push(...piece);
    distance_m.push(keep_m);
    feature.push(of);
    outline.push(parcel);
  };
  const addRings = (rings: Rings, keep_m: number, of: number, parcel: number): void =>
    forEachEdge(rings, (_, px, py, qx, qy) => add([px, py, qx, qy], keep_m, of, parcel));
  for (const [parcel, rings] of ground.plantingParts.outlines.entries()) {
    addRings(rings, mainLine.boundaryDistance_m, -1, parcel);
  }
  for (const { key, name, shape, trenchDistance_m, crossing } of keepOuts) {
    if (crossing === "free") continue;
    const areas = areasOf(shape, ground.frame);
    const of = features.push({ key, name, isCrossable: crossing === "square", areas }) - 1;
    for (const rings of areas) addRings(rings, trenchDistance_m, of, -1);
    for (const piece of piecesOf(shape, ground.frame)) add(piece, trenchDistance_m, of, -1);
  }
  return {
    xy: Float64Array.from(xy),
    distance_m: Float64Array.from(distance_m),
    feature: Int32Array.from(feature),
    outline: Int32Array.from(outline),
    features,
  };
}

function areasOf({ areas }: Shape, frame: Frame): readonly Rings[] {
  return areas.map((area) => planeRings(area, frame));
}

/** Points and the pieces of lines. */
function piecesOf({ points, lines }: Shape, frame: Frame): readonly (readonly [number, number, number, number])[] {
  const ofPoints = points.map((at) => {
    const [x, y] = frame.toPlane(at);
    return [x, y, x, y] as const;
  });
  const ofLines = lines.flatMap((line) => {
    const places = line.map((at) => frame.toPlane(at));
    return places.slice(1).map((to, i) => {
      const from = places[i] ?? to;
      return [from[0], from[1], to[0], to[1]] as const;
    });
  });
  return [...ofPoints, ...ofLines];
}

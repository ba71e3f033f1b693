import { planePoint } from "../plane/coordinate.ts";
import type { Frame } from "../plane/frame.ts";
import { plantingArea, unionArea } from "../plane/overlay.ts";
import type { BlockArea } from "../project/project.ts";
import type { BlockGround, Cause, Outline, Rings } from "./ground.ts";
import { partsOfEdge } from "./inside.ts";
import { forEachEdge, planeRings } from "./outlines.ts";
import { addSegment, type SegmentDraft, segmentsOf } from "./segments.ts";

/** Areas that share less than this only touch. */
export const leastShared_m2 = 1;

/** What all blocks have in common: outlines, what to keep out of, and its distances. */
export interface SharedGround {
  readonly frame: Frame;
  readonly outlines: readonly Outline[];
  readonly segments: SegmentDraft;
  readonly closed: BlockGround["closed"];
  readonly passable: BlockGround["passable"];
}

/** The areas drawn for a block; empty when it has none of its own. */
export function drawnAreas(block: string, areas: readonly BlockArea[], frame: Frame): readonly Rings[] {
  return areas
    .filter((area) => area.block === block)
    .flatMap((area) => area.polygons.map((polygon) => planeRings(polygon, frame)));
}

/** What the areas of other blocks leave, as one area around all outlines; empty when there are no others. */
export function remainingArea(outlines: readonly Outline[], others: readonly Rings[]): readonly Rings[] {
  return others.length === 0 ? [] : [rest(outlines, apart(others))];
}

/** The ground of one block. Blocks keep half a row spacing from a border that runs through the parcels, so neighbours keep a whole one. */
export function blockGround(
  block: string,
  rowSpacing_m: number,
  areas: readonly Rings[],
  isDrawn: boolean,
  centre: readonly [x_m: number, y_m: number],
  causes: Cause[],
  shared: SharedGround,
): BlockGround {
  const segments: SegmentDraft = {
    xy: [...shared.segments.xy],
    distance_m: [...shared.segments.distance_m],
    cause: [...shared.segments.cause],
  };
  const parcels = shared.outlines.map((outline) => outline.rings);
  const bounded: Outline[] = areas.map((rings) => {
    const cause = causes.length;
    causes.push({ kind: "block", feature: block, edge: null, name: null });
    forEachEdge(rings, (_, px, py, qx, qy) => {
      for (const part of partsOfEdge(px, py, qx, qy, parcels, (left, right) => left && right)) {
        addSegment(segments, part, rowSpacing_m / 2, cause);
      }
    });
    return { rings, cause: new Int32Array(rings.xy.length / 2).fill(cause) };
  });
  return {
    block,
    area_m2: blockArea(shared.outlines, bounded),
    outlines: shared.outlines,
    areas: bounded,
    isDrawn,
    closed: shared.closed,
    segments: segmentsOf(segments),
    passable: shared.passable,
    centre,
    convergence_deg: shared.frame.convergence_deg(planePoint(centre[0], centre[1])),
  };
}

/** The parcels' area within the block's areas; with no area all of it. */
function blockArea(outlines: readonly Outline[], areas: readonly Outline[]): number {
  const parcels = outlines.map((outline) => outline.rings);
  if (areas.length === 0) return unionArea(parcels);
  const none = { xy: new Float64Array(0), distance_m: new Float64Array(0) };
  return plantingArea({ outlines: parcels, areas: areas.map((area) => area.rings), closed: [], segments: none })
    .area_m2;
}

/** The areas as they are, or their union where they overlap: counted twice, ground would seem to be left. */
function apart(areas: readonly Rings[]): readonly Rings[] {
  const sum_m2 = areas.reduce((sum, rings) => sum + unionArea([rings]), 0);
  if (sum_m2 - unionArea(areas) < leastShared_m2) return areas;
  const none = { xy: new Float64Array(0), distance_m: new Float64Array(0) };
  return plantingArea({ outlines: areas, areas: [], closed: [], segments: none }).polygons.map(ringsOf);
}

function ringsOf(polygon: readonly Float64Array[]): Rings {
  const ringStart = [0];
  for (const ring of polygon) ringStart.push(Number(ringStart.at(-1)) + ring.length / 2);
  return { xy: Float64Array.from(polygon.flatMap((ring) => [...ring])), ringStart: Int32Array.from(ringStart) };
}

/** How far around the outlines the area that is left is drawn: further than any headland reaches. */
const beyond_m = 10_000;

/** Everything around the outlines with the other areas as holes. */
function rest(outlines: readonly Outline[], others: readonly Rings[]): Rings {
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { rings } of outlines) {
    for (let i = 0; i + 1 < rings.xy.length; i += 2) {
      west = Math.min(west, Number(rings.xy[i]));
      east = Math.max(east, Number(rings.xy[i]));
      south = Math.min(south, Number(rings.xy[i + 1]));
      north = Math.max(north, Number(rings.xy[i + 1]));
    }
  }
  const around = beyond_m;
  const box = [
    west - around,
    south - around,
    east + around,
    south - around,
    east + around,
    north + around,
    west - around,
    north + around,
  ];
  const xy = [...box, ...others.flatMap((rings) => [...rings.xy])];
  const ringStart = [0, 4];
  for (const { ringStart: starts } of others) {
    const base = Number(ringStart.at(-1));
    for (const start of starts.subarray(1)) ringStart.push(base + start);
  }
  return { xy: Float64Array.from(xy), ringStart: Int32Array.from(ringStart) };
}

import { planePoint } from "../plane/coordinate.ts";
import { coveredArea_m2 } from "../plane/covered-area.ts";
import type { Frame } from "../plane/frame.ts";
import type { BlockArea } from "../project/project.ts";
import type { BlockGround, Cause, Outline, Rings } from "./ground.ts";
import { partsOfEdge } from "./inside.ts";
import { areaOf } from "./middle.ts";
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

/** What each area of other blocks leaves, as an area around all outlines. */
export function remainingAreas(outlines: readonly Outline[], others: readonly Rings[]): readonly Rings[] {
  return others.map((other) => rest(outlines, other));
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
    area_m2: blockArea(shared.outlines, bounded, isDrawn),
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

/** Area of several polygons, counted once where they overlap. */
export function areaOfAll(all: readonly Rings[]): number {
  const [only] = all;
  return all.length === 1 && only !== undefined ? areaOf(only).area_m2 : coveredArea_m2([all]);
}

/** The parcels' area within the block's areas: any of those drawn for it, else all that others leave. */
function blockArea(outlines: readonly Outline[], areas: readonly Outline[], isDrawn: boolean): number {
  const [parcels, bounds] = [outlines, areas].map((list) => list.map(({ rings }) => rings));
  if (parcels === undefined || bounds === undefined || bounds.length === 0) return areaOfAll(parcels ?? []);
  return coveredArea_m2(isDrawn ? [parcels, bounds] : [parcels, ...bounds.map((one) => [one])]);
}

/** How far around the outlines the area that is left is drawn: further than any headland reaches. */
const beyond_m = 10_000;

/** Everything around the outlines with another block's area as a hole. */
function rest(outlines: readonly Outline[], other: Rings): Rings {
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
  return {
    xy: Float64Array.from([...box, ...other.xy]),
    ringStart: Int32Array.from([0, ...other.ringStart.map((start) => start + box.length / 2)]),
  };
}

import type { Frame } from "../plane/frame.ts";
import type { FeatureKey, Shape } from "../project/project.ts";
import type { Closed, Segments } from "./ground.ts";
import { forEachEdge, planeRings } from "./outlines.ts";

/** Segments gathered one by one. */
export interface SegmentDraft {
  readonly xy: number[];
  readonly distance_m: number[];
  readonly cause: number[];
}

export function segmentDraft(): SegmentDraft {
  return { xy: [], distance_m: [], cause: [] };
}

export function addSegment(
  to: SegmentDraft,
  segment: readonly [px: number, py: number, qx: number, qy: number],
  distance_m: number,
  cause: number,
): void {
  if (distance_m <= 0) return;
  to.xy.push(...segment);
  to.distance_m.push(distance_m);
  to.cause.push(cause);
}

export function segmentsOf(draft: SegmentDraft): Segments {
  return {
    xy: Float64Array.from(draft.xy),
    distance_m: Float64Array.from(draft.distance_m),
    cause: Int32Array.from(draft.cause),
  };
}

/** Adds every point, line and area edge of a drawn shape at one distance; gives back its areas, which are closed as a whole. */
export function addShape(
  to: SegmentDraft,
  shape: Shape,
  frame: Frame,
  distance_m: number,
  cause: number,
  feature: FeatureKey,
): readonly Closed[] {
  for (const at of shape.points) {
    const [x, y] = frame.toPlane(at);
    addSegment(to, [x, y, x, y], distance_m, cause);
  }
  for (const line of shape.lines) {
    line.forEach((at, i) => {
      const following = line[i + 1];
      if (following === undefined) return;
      const [px, py] = frame.toPlane(at);
      const [qx, qy] = frame.toPlane(following);
      addSegment(to, [px, py, qx, qy], distance_m, cause);
    });
  }
  return shape.areas.map((area) => {
    const rings = planeRings(area, frame);
    forEachEdge(rings, (_, px, py, qx, qy) => addSegment(to, [px, py, qx, qy], distance_m, cause));
    return { feature, rings, cause: new Int32Array(rings.xy.length / 2).fill(cause) };
  });
}

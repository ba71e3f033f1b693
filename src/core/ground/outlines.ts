import type { Frame } from "../plane/frame.ts";
import { nearestOnSegment } from "../plane/segment.ts";
import type { EdgeSetback, Parcel, Polygon } from "../project/project.ts";
import type { Cause, Outline, Rings } from "./ground.ts";

/** How far a drawn edge may lie from the outline it belongs to: coordinates of 6 decimals are 7 cm off at worst. */
const onOutline_m = 0.1;

/** An outline in the plane with the setback of each edge. */
export interface ParcelOutline extends Outline {
  readonly setback_m: Float64Array;
}

export interface ParcelOutlines {
  readonly outlines: readonly ParcelOutline[];
  readonly causes: readonly Cause[];
  /** Edge features no part of which lies on an outline. */
  readonly astray: readonly EdgeSetback[];
  /** Edges of the outline covered by each edge feature, as plane segments, by the feature's key: what a row bearing is taken from. */
  readonly covered: ReadonlyMap<string, readonly Float64Array[]>;
}

/** Rings of a polygon in plane metres. */
export function planeRings(polygon: Polygon, frame: Frame): Rings {
  const points = polygon.reduce((sum, ring) => sum + ring.length, 0);
  const xy = new Float64Array(2 * points);
  const ringStart = new Int32Array(polygon.length + 1);
  let n = 0;
  polygon.forEach((ring, r) => {
    for (const at of ring) {
      xy.set(frame.toPlane(at), 2 * n);
      n++;
    }
    ringStart[r + 1] = n;
  });
  return { xy, ringStart };
}

/**
 * The parcels' outlines with each edge's setback: the default, the parcel's own, or that of an edge feature drawn along it. An edge
 * feature that begins or ends within an edge divides it there.
 */
export function parcelOutlines(
  parcels: readonly Parcel[],
  edges: readonly EdgeSetback[],
  setback_m: number,
  frame: Frame,
): ParcelOutlines {
  const lines = edges.map((edge) => ({ edge, xy: edge.line.map((at) => frame.toPlane(at)) }));
  const causes: Cause[] = [];
  const outlines: ParcelOutline[] = [];
  const covered = new Map<string, Float64Array[]>();
  for (const parcel of parcels) {
    let number = 0;
    for (const polygon of parcel.polygons) {
      const rings = divided(
        planeRings(polygon, frame),
        lines.flatMap((line) => line.xy),
      );
      const edgeCount = rings.xy.length / 2;
      const setback = new Float64Array(edgeCount).fill(parcel.setback_m ?? setback_m);
      const cause = new Int32Array(edgeCount);
      forEachEdge(rings, (e, px, py, qx, qy) => {
        number++;
        cause[e] = causes.length;
        const along = lines.filter(({ xy }) => runsAlong(xy, px, py, qx, qy));
        for (const { edge } of along) {
          covered.set(edge.key, [...(covered.get(edge.key) ?? []), Float64Array.of(px, py, qx, qy)]);
        }
        const own = along.findLast(({ edge }) => edge.setback_m !== null)?.edge;
        if (own?.setback_m != null) setback[e] = own.setback_m;
        const name = along.findLast(({ edge }) => edge.name !== null)?.edge.name ?? null;
        causes.push({ kind: "edge", feature: parcel.key, edge: number, name });
      });
      outlines.push({ rings, cause, setback_m: setback });
    }
  }
  return { outlines, causes, astray: edges.filter((edge) => !covered.has(edge.key)), covered };
}

/** Calls back with every edge of the rings: its number (that of the point it begins at) and its two ends. */
export function forEachEdge(
  rings: Rings,
  visit: (edge: number, px: number, py: number, qx: number, qy: number) => void,
): void {
  const { xy, ringStart } = rings;
  for (let r = 0; r + 1 < ringStart.length; r++) {
    const from = Number(ringStart[r]);
    const to = Number(ringStart[r + 1]);
    for (let p = from; p < to; p++) {
      const q = p + 1 < to ? p + 1 : from;
      visit(p, Number(xy[2 * p]), Number(xy[2 * p + 1]), Number(xy[2 * q]), Number(xy[2 * q + 1]));
    }
  }
}

/** True when the whole edge p to q lies on the drawn line: its ends and its middle do. */
function runsAlong(
  line: readonly (readonly [number, number])[],
  px: number,
  py: number,
  qx: number,
  qy: number,
): boolean {
  return (
    isOn(line, px, py) &&
    isOn(line, qx, qy) &&
    isOn(line, (px + qx) / 2, (py + qy) / 2) &&
    Math.hypot(qx - px, qy - py) > onOutline_m
  );
}

function isOn(line: readonly (readonly [number, number])[], x: number, y: number): boolean {
  return line.some((p, i) => {
    const q = line[i + 1];
    return q !== undefined && nearestOnSegment(x, y, p[0], p[1], q[0], q[1]).distance_m <= onOutline_m;
  });
}

/** The rings with a point more wherever one of the places lies on an edge between its ends. */
function divided(rings: Rings, places: readonly (readonly [number, number])[]): Rings {
  if (places.length === 0) return rings;
  const xy: number[] = [];
  const ringStart = new Int32Array(rings.ringStart.length);
  let ring = 0;
  forEachEdge(rings, (e, px, py, qx, qy) => {
    while (e >= Number(rings.ringStart[ring + 1])) {
      ring++;
      ringStart[ring] = xy.length / 2;
    }
    xy.push(px, py);
    const length = Math.hypot(qx - px, qy - py);
    const stops = places
      .map(([x, y]) => nearestOnSegment(x, y, px, py, qx, qy))
      .filter(
        ({ distance_m, along }) =>
          distance_m <= onOutline_m && along * length > onOutline_m && (1 - along) * length > onOutline_m,
      )
      .map(({ along }) => along)
      .sort((a, b) => a - b);
    let last = 0;
    for (const along of stops) {
      if ((along - last) * length <= onOutline_m) continue;
      xy.push(px + along * (qx - px), py + along * (qy - py));
      last = along;
    }
  });
  ringStart[rings.ringStart.length - 1] = xy.length / 2;
  return { xy: Float64Array.from(xy), ringStart };
}

import { crossingAlong } from "../plane/segment.ts";
import type { Rings } from "./ground.ts";
import { forEachEdge } from "./outlines.ts";

/** Even-odd: is the place inside the rings? On the boundary either answer may come. */
export function isInside(rings: Rings, x: number, y: number): boolean {
  let inside = false;
  forEachEdge(rings, (_, px, py, qx, qy) => {
    if (py > y !== qy > y && x < px + ((y - py) * (qx - px)) / (qy - py)) inside = !inside;
  });
  return inside;
}

/** How far to the sides of an edge to look for ground. */
const beside_m = 1e-4;

/**
 * The parts of an edge that have ground of `rings` on both sides, or on fewer, as asked: where several polygons overlap or share an edge
 * only the outline of them all is an outline. The edge is divided at every crossing with another.
 */
export function partsOfEdge(
  px: number,
  py: number,
  qx: number,
  qy: number,
  rings: readonly Rings[],
  keep: (left: boolean, right: boolean) => boolean,
): readonly (readonly [number, number, number, number])[] {
  const length = Math.hypot(qx - px, qy - py);
  if (length === 0) return [];
  const stops = [0, 1];
  const [loX, hiX] = [Math.min(px, qx), Math.max(px, qx)];
  const [loY, hiY] = [Math.min(py, qy), Math.max(py, qy)];
  for (const other of rings) {
    forEachEdge(other, (_, rx, ry, sx, sy) => {
      if (Math.max(rx, sx) < loX || Math.min(rx, sx) > hiX || Math.max(ry, sy) < loY || Math.min(ry, sy) > hiY) return;
      const along = crossingAlong([px, py], [qx, qy], [rx, ry], [sx, sy]);
      if (along !== null) stops.push(along);
      else stops.push(...endsOnEdge(px, py, qx, qy, length, rx, ry), ...endsOnEdge(px, py, qx, qy, length, sx, sy));
    });
  }
  stops.sort((a, b) => a - b);
  const nx = (-(qy - py) / length) * beside_m;
  const ny = ((qx - px) / length) * beside_m;
  const isGround = (x: number, y: number) => rings.some((other) => isInside(other, x, y));
  const parts: [number, number, number, number][] = [];
  for (let i = 0; i + 1 < stops.length; i++) {
    const a = Number(stops[i]);
    const b = Number(stops[i + 1]);
    if ((b - a) * length < beside_m) continue;
    const mx = px + ((a + b) / 2) * (qx - px);
    const my = py + ((a + b) / 2) * (qy - py);
    if (!keep(isGround(mx + nx, my + ny), isGround(mx - nx, my - ny))) continue;
    parts.push([px + a * (qx - px), py + a * (qy - py), px + b * (qx - px), py + b * (qy - py)]);
  }
  return parts;
}

/** Where along the edge a point of a parallel edge lies beside it. */
function endsOnEdge(px: number, py: number, qx: number, qy: number, length: number, x: number, y: number): number[] {
  const along = ((x - px) * (qx - px) + (y - py) * (qy - py)) / (length * length);
  return along > 0 && along < 1 ? [along] : [];
}

import { nearestOnSegment } from "./segment.ts";

/** Least distance between two segments, metres: p to q, and r to s; 0 where they cross or touch. */
export function segmentsApart_m(
  px: number,
  py: number,
  qx: number,
  qy: number,
  rx: number,
  ry: number,
  sx: number,
  sy: number,
): number {
  if (areCrossing(px, py, qx, qy, rx, ry, sx, sy)) return 0;
  return Math.min(
    nearestOnSegment(px, py, rx, ry, sx, sy).distance_m,
    nearestOnSegment(qx, qy, rx, ry, sx, sy).distance_m,
    nearestOnSegment(rx, ry, px, py, qx, qy).distance_m,
    nearestOnSegment(sx, sy, px, py, qx, qy).distance_m,
  );
}

/** A quick yes to two segments being farther apart than `keep_m`: one lies as a whole to one side of the other's line. No tells nothing. */
export function areClearlyApart(
  px: number,
  py: number,
  qx: number,
  qy: number,
  rx: number,
  ry: number,
  sx: number,
  sy: number,
  keep_m: number,
): boolean {
  const keep2 = keep_m * Math.hypot(qx - px, qy - py);
  const r = side(px, py, qx, qy, rx, ry);
  const s = side(px, py, qx, qy, sx, sy);
  return (r > keep2 && s > keep2) || (r < -keep2 && s < -keep2);
}

/** Do they cross at a place inside both? Ends that touch the other do not count. */
export function areCrossing(
  px: number,
  py: number,
  qx: number,
  qy: number,
  rx: number,
  ry: number,
  sx: number,
  sy: number,
): boolean {
  const a = side(px, py, qx, qy, rx, ry) * side(px, py, qx, qy, sx, sy);
  const b = side(rx, ry, sx, sy, px, py) * side(rx, ry, sx, sy, qx, qy);
  return a < 0 && b < 0;
}

function side(px: number, py: number, qx: number, qy: number, x: number, y: number): number {
  return (qx - px) * (y - py) - (qy - py) * (x - px);
}

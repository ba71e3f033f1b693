/** Closest place on the segment p to q to a point: `along` from 0 at p to 1 at q, and the distance in metres. */
export function nearestOnSegment(
  x: number,
  y: number,
  px: number,
  py: number,
  qx: number,
  qy: number,
): { readonly along: number; readonly distance_m: number } {
  const dx = qx - px;
  const dy = qy - py;
  const length2 = dx * dx + dy * dy;
  const along = length2 === 0 ? 0 : Math.min(1, Math.max(0, ((x - px) * dx + (y - py) * dy) / length2));
  return { along, distance_m: Math.hypot(px + along * dx - x, py + along * dy - y) };
}

/** Where along p to q (0 to 1, ends included) it meets r to s; null when they are apart or parallel. */
export function crossingAlong(
  p: readonly [number, number],
  q: readonly [number, number],
  r: readonly [number, number],
  s: readonly [number, number],
): number | null {
  const dx = q[0] - p[0];
  const dy = q[1] - p[1];
  const ex = s[0] - r[0];
  const ey = s[1] - r[1];
  const cross = dx * ey - dy * ex;
  if (cross === 0) return null;
  const along = ((r[0] - p[0]) * ey - (r[1] - p[1]) * ex) / cross;
  const other = ((r[0] - p[0]) * dy - (r[1] - p[1]) * dx) / cross;
  return along >= 0 && along <= 1 && other >= 0 && other <= 1 ? along : null;
}

import type { Drawn } from "./drawn.ts";

/** Furthest that a side may be from its curve, in units of the drawing: half a centimetre in metres. */
const tolerance = 0.005;
const leastStep_rad = Math.PI / 180;
const mostStep_rad = Math.PI / 12;

/** Points of an arc from one angle through a turn (above 0 to the left), both ends among them. */
export function arcPoints(centre: Drawn, radius: number, from_rad: number, turn_rad: number): readonly Drawn[] {
  const fine = 2 * Math.acos(Math.max(-1, Math.min(1, 1 - tolerance / radius)));
  const step_rad = Math.min(mostStep_rad, Math.max(leastStep_rad, Number.isFinite(fine) ? fine : mostStep_rad));
  const count = Math.max(1, Math.ceil(Math.abs(turn_rad) / step_rad));
  return Array.from({ length: count + 1 }, (_, i) => {
    const angle = from_rad + (turn_rad * i) / count;
    return [centre[0] + radius * Math.cos(angle), centre[1] + radius * Math.sin(angle), centre[2]];
  });
}

/** The angle that a counter-clockwise arc turns through. */
export function turnBetween(from_rad: number, to_rad: number): number {
  const turn = (to_rad - from_rad) % (2 * Math.PI);
  return turn <= 0 ? turn + 2 * Math.PI : turn;
}

/** A point on the way of a polyline, and how the side after it bulges: the tangent of a quarter of its arc, above 0 to the left. */
export interface Corner {
  readonly at: Drawn;
  readonly bulge: number;
}

/** The points of a polyline with its bulges as corners. Source: DXF reference, LWPOLYLINE group 42. */
export function bulgedPoints(corners: readonly Corner[], isClosed: boolean): readonly Drawn[] {
  const points: Drawn[] = [];
  for (const [i, { at, bulge }] of corners.entries()) {
    points.push(at);
    const next = corners[i + 1] ?? (isClosed ? corners[0] : undefined);
    if (next === undefined || bulge === 0) continue;
    points.push(...bulgeBetween(at, next.at, bulge));
  }
  return points;
}

/** Points between the ends of a bulged side. */
function bulgeBetween(from: Drawn, to: Drawn, bulge: number): readonly Drawn[] {
  const chord = Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (chord === 0) return [];
  const turn_rad = 4 * Math.atan(bulge);
  const radius = chord / (2 * Math.sin(turn_rad / 2));
  const along = Math.atan2(to[1] - from[1], to[0] - from[0]);
  const toCentre = along + Math.PI / 2 - turn_rad / 2;
  const centre: Drawn = [from[0] + radius * Math.cos(toCentre), from[1] + radius * Math.sin(toCentre), from[2]];
  const start = Math.atan2(from[1] - centre[1], from[0] - centre[0]);
  return arcPoints(centre, Math.abs(radius), start, turn_rad).slice(1, -1);
}

/** Points of an ellipse by its long half axis, the share of the short one, and its parameters. */
export function ellipsePoints(
  centre: Drawn,
  axis: readonly [x: number, y: number],
  ratio: number,
  from_rad: number,
  turn_rad: number,
): readonly Drawn[] {
  const count = Math.max(2, Math.ceil(Math.abs(turn_rad) / (2 * leastStep_rad)));
  return Array.from({ length: count + 1 }, (_, i) => {
    const angle = from_rad + (turn_rad * i) / count;
    const [cos, sin] = [Math.cos(angle), ratio * Math.sin(angle)];
    return [centre[0] + axis[0] * cos - axis[1] * sin, centre[1] + axis[1] * cos + axis[0] * sin, centre[2]];
  });
}

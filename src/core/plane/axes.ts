import { type PlanePoint, planePoint } from "./coordinate.ts";

/** The plane turned to the rows: u runs along the grid bearing, v across it to the right, both in metres from the pivot. */
export interface Axes {
  readonly x_m: number;
  readonly y_m: number;
  readonly sin: number;
  readonly cos: number;
}

/** Axes at a pivot with u along a grid bearing (clockwise from grid north). */
export function axesAt(pivot: readonly [x_m: number, y_m: number], gridBearing_deg: number): Axes {
  const angle = (gridBearing_deg * Math.PI) / 180;
  return { x_m: pivot[0], y_m: pivot[1], sin: Math.sin(angle), cos: Math.cos(angle) };
}

/** x, y pairs turned into u, v pairs. */
export function turn(xy: Float64Array, axes: Axes): Float64Array {
  const uv = new Float64Array(xy.length);
  const { x_m, y_m, sin, cos } = axes;
  for (let i = 0; i + 1 < xy.length; i += 2) {
    const x = Number(xy[i]) - x_m;
    const y = Number(xy[i + 1]) - y_m;
    uv[i] = x * sin + y * cos;
    uv[i + 1] = x * cos - y * sin;
  }
  return uv;
}

/** A place of the plane as u, v. */
export function turnPoint([x, y]: PlanePoint, axes: Axes): readonly [u_m: number, v_m: number] {
  const [east, north] = [x - axes.x_m, y - axes.y_m];
  return [east * axes.sin + north * axes.cos, east * axes.cos - north * axes.sin];
}

/** A place given along and across, back in the plane. */
export function turnBack(u_m: number, v_m: number, axes: Axes): PlanePoint {
  return planePoint(axes.x_m + u_m * axes.sin + v_m * axes.cos, axes.y_m + u_m * axes.cos - v_m * axes.sin);
}

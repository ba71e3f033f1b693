import type { Map as MapLibreMap } from "maplibre-gl";
import type { DrawnPath } from "../../core/drawing/drawn.ts";
import { type LonLat, lonLat } from "../../core/plane/coordinate.ts";
import type { Frame } from "../../core/plane/frame.ts";

/** A place on the screen, from the map's upper left corner. */
export interface Pixel {
  readonly x: number;
  readonly y: number;
}

/** Where a place is on the screen; on the world's copy that is in view. */
export function pixelOf(map: MapLibreMap, at: LonLat): Pixel {
  const centre = map.getCenter().lng;
  const turns = Math.round((at[0] - centre) / 360);
  return map.project([at[0] - 360 * turns, at[1]]);
}

/** The place under a pixel. */
export function placeOf(map: MapLibreMap, { x, y }: Pixel): LonLat {
  const { lng, lat } = map.unproject([x, y]).wrap();
  return lonLat(lng, lat);
}

/** Metres that a number of pixels span on the ground around a place. */
export function reach_m(map: MapLibreMap, frame: Frame, at: LonLat, reach_px: number): number {
  const { x, y } = pixelOf(map, at);
  const [here, there] = [frame.toPlane(at), frame.toPlane(placeOf(map, { x: x + reach_px, y }))];
  return Math.hypot(there[0] - here[0], there[1] - here[1]);
}

export function distance_px(one: Pixel, other: Pixel): number {
  return Math.hypot(one.x - other.x, one.y - other.y);
}

/** Distance on the screen from a pixel to a straight piece. */
export function distanceToPiece_px(at: Pixel, from: Pixel, to: Pixel): number {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const square = dx * dx + dy * dy;
  const share = square === 0 ? 0 : ((at.x - from.x) * dx + (at.y - from.y) * dy) / square;
  const along = Math.min(1, Math.max(0, share));
  return Math.hypot(at.x - from.x - along * dx, at.y - from.y - along * dy);
}

/** The two ends of every side of a path. */
export function sidesOf<T>({
  closed,
  corners,
}: {
  readonly closed: boolean;
  readonly corners: readonly T[];
}): (readonly [T, T])[] {
  const sides = corners.slice(1).map((to, i): readonly [T, T] => [corners[i] ?? to, to]);
  const [first, last] = [corners[0], corners.at(-1)];
  return closed && corners.length > 2 && first !== undefined && last !== undefined ? [...sides, [last, first]] : sides;
}

/** True when a pixel lies inside an area's paths, holes left out. */
export function isInside(at: Pixel, paths: readonly (readonly Pixel[])[]): boolean {
  let inside = false;
  for (const corners of paths) {
    for (const [from, to] of sidesOf({ closed: true, corners })) {
      const crosses = from.y > at.y !== to.y > at.y;
      if (crosses && at.x < ((to.x - from.x) * (at.y - from.y)) / (to.y - from.y) + from.x) inside = !inside;
    }
  }
  return inside;
}

/** A path as the "d" of an SVG path. */
export function svgPath(corners: readonly Pixel[], closed: boolean): string {
  const points = corners.map(({ x, y }) => `${x.toFixed(1)} ${y.toFixed(1)}`);
  return points.length === 0 ? "" : `M${points.join("L")}${closed ? "Z" : ""}`;
}

export function pathPixels(map: MapLibreMap, path: DrawnPath): Pixel[] {
  return path.corners.map((at) => pixelOf(map, at));
}

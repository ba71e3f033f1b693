import type { BandSet } from "../../../src/core/plane/band-outline.ts";

/** Pieces of each half circle. */
const pieces = 16;

/**
 * Stadium of each piece as a polygon drawn around it (no point of the true one is left out), x and y in turn, counter-clockwise:
 * what a polygon overlay must be given so that setbacks are kept.
 */
export function stadiumsAround({ xy, distance_m }: BandSet): number[][] {
  return Array.from(distance_m, (distance, i) => {
    const [x1 = 0, y1 = 0, x2 = 0, y2 = 0] = xy.subarray(4 * i, 4 * i + 4);
    const along = Math.atan2(y2 - y1, x2 - x1);
    const radius = distance / Math.cos(Math.PI / (2 * pieces));
    const outline: number[] = [];
    // Corners stand half a step off the straight sides, so that every side of the polygon touches the true stadium.
    for (let k = 0; k < pieces; k++) corner(x2, y2, along - Math.PI / 2 + ((k + 0.5) * Math.PI) / pieces);
    for (let k = 0; k < pieces; k++) corner(x1, y1, along + Math.PI / 2 + ((k + 0.5) * Math.PI) / pieces);
    return outline;

    function corner(x: number, y: number, angle: number): void {
      outline.push(x + radius * Math.cos(angle), y + radius * Math.sin(angle));
    }
  });
}

import type { BlockGround } from "../core/ground/ground.ts";

const radians = Math.PI / 180;

/** Direction in the plane of a true angle at the block's centre: angles run clockwise from north, 0 to 360. */
export function planeDirection(block: BlockGround, angle_deg: number): readonly [dx: number, dy: number] {
  const grid = (angle_deg - block.convergence_deg) * radians;
  return [Math.sin(grid), Math.cos(grid)];
}

/** True angle, 0 to 360, from the block's centre to a place in the plane. */
export function angleTo(block: BlockGround, x_m: number, y_m: number): number {
  const grid = Math.atan2(x_m - block.centre[0], y_m - block.centre[1]) / radians;
  return turned(grid + block.convergence_deg, 360);
}

/** Of the two ends of a bearing, the angle nearer to where the handle is now, so that it never jumps to the other side. */
export function nearerEnd(bearing_deg: number, angle_deg: number): number {
  const apart = Math.abs(((bearing_deg - angle_deg + 540) % 360) - 180);
  return turned(apart > 90 ? bearing_deg + 180 : bearing_deg, 360);
}

/** An angle brought into 0 to `whole`, the end itself excluded. */
export function turned(angle_deg: number, whole: number): number {
  const rest = angle_deg % whole;
  return rest < 0 ? rest + whole : rest;
}

/** A bearing of the handle, rounded to a tenth of a degree, in [0, 180). */
export function handleBearing(angle_deg: number): number {
  return turned(Math.round(angle_deg * 10), 1800) / 10;
}

/** Distance from the block's centre to the furthest corner of its ground, metres. */
export function blockReach_m(block: BlockGround): number {
  const outlines = block.isDrawn ? block.areas : block.outlines;
  let reach_m = 0;
  for (const { rings } of outlines) {
    for (let i = 0; i + 1 < rings.xy.length; i += 2) {
      reach_m = Math.max(
        reach_m,
        Math.hypot((rings.xy[i] ?? 0) - block.centre[0], (rings.xy[i + 1] ?? 0) - block.centre[1]),
      );
    }
  }
  return reach_m;
}

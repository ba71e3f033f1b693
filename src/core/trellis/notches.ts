import type { PostSettings } from "../project/project.ts";

/** The height a post holds a wire at: the notch nearest to the height wished for, or that height where there are no notches. */
export function heldHeight_m(height_m: number, { holds, firstNotch_m, notchPitch_m }: PostSettings): number {
  if (holds !== "notch") return height_m;
  const notches = Math.max(0, Math.round((height_m - firstNotch_m) / notchPitch_m));
  return firstNotch_m + notches * notchPitch_m;
}

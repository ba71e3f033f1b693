import type { CuttingSettings } from "../../project/project.ts";

/** What a coil gives, m: its length less the share of it and the length that are kept back. Under 0 for a rest shorter than its reserve. */
export function usable_m(
  coil_m: number,
  { reserve_ratio, reserve_m }: Pick<CuttingSettings, "reserve_ratio" | "reserve_m">,
): number {
  return coil_m * (1 - reserve_ratio) - reserve_m;
}

/**
 * Length along the ground of a plan length on an even slope: plan · √(1 + s²). Geometry.
 * `slope_ratio` is rise over plan length (0.1 is 10 %), its sign without effect. Worked example: 100 m at 10 % is 100.498756 m.
 */
export function alongSlope_m(plan_m: number, slope_ratio: number): number {
  return plan_m * Math.sqrt(1 + slope_ratio * slope_ratio);
}

/** What a slope is along a row and across it, when its fall line makes an angle with the row: s · cos ψ and s · sin ψ. Geometry. */
export function slopeParts(
  slope_ratio: number,
  fallLineToRow_deg: number,
): { readonly along_ratio: number; readonly across_ratio: number } {
  const angle = (fallLineToRow_deg * Math.PI) / 180;
  return { along_ratio: slope_ratio * Math.cos(angle), across_ratio: slope_ratio * Math.sin(angle) };
}

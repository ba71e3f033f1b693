import type { LonLat } from "../../plane/coordinate.ts";
import type { Baseline, LayerJob } from "./layer-job.ts";

/** Station and offset of places from a baseline, metres: along it from its first end, and square to it, to the right above 0. */
export function baselineReader({ plan }: Pick<LayerJob, "plan">, { from, to }: Baseline) {
  if (plan.ground === null) throw new Error("a plan with places has a ground");
  const { frame } = plan.ground;
  const [x0, y0] = frame.toPlane(from);
  const [x1, y1] = frame.toPlane(to);
  const length_m = Math.hypot(x1 - x0, y1 - y0);
  const [dx, dy] = [(x1 - x0) / length_m, (y1 - y0) / length_m];
  return (at: LonLat): { readonly station_m: number; readonly offset_m: number } => {
    const [x, y] = frame.toPlane(at);
    return {
      station_m: (x - x0) * dx + (y - y0) * dy,
      offset_m: (x - x0) * dy - (y - y0) * dx,
    };
  };
}

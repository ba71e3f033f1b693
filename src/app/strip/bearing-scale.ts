import { type ScaleLinear, scaleLinear } from "d3-scale";
import { area, line } from "d3-shape";
import type { SweepPoint } from "../../core/rows/rows.ts";

/** Size of the bearing chart in its own units. */
export const chart = { width: 352, height: 176, left: 8, right: 8, top: 20, bottom: 24 } as const;

export interface BearingScale {
  readonly x: ScaleLinear<number, number>;
  readonly y: ScaleLinear<number, number>;
  /** Row length as an area, score as a line: SVG paths. */
  readonly lengthPath: string;
  readonly scorePath: string;
}

/** Scales and paths of the bearing chart; the bottom is a little under the lowest score, so that differences can be seen. */
export function bearingScale(points: readonly SweepPoint[]): BearingScale {
  const lowest = Math.min(...points.map(({ score_m }) => score_m));
  const highest = Math.max(1, ...points.map(({ rowLength_m }) => rowLength_m));
  const x = scaleLinear([0, 180], [chart.left, chart.width - chart.right]);
  const y = scaleLinear([lowest - 0.08 * (highest - lowest), highest], [chart.height - chart.bottom, chart.top]);
  const round = [...points, ...points.slice(0, 1).map((first) => ({ ...first, bearing_deg: 180 }))];
  const lengthPath =
    area<SweepPoint>()
      .x((point) => x(point.bearing_deg))
      .y0(y.range()[0] ?? 0)
      .y1((point) => y(point.rowLength_m))(round) ?? "";
  const scorePath =
    line<SweepPoint>()
      .x((point) => x(point.bearing_deg))
      .y((point) => y(point.score_m))(round) ?? "";
  return { x, y, lengthPath, scorePath };
}

/** Locked stretches of bearings, each from its first to past its last point. */
export function lockedStretches(points: readonly SweepPoint[]): readonly { from_deg: number; to_deg: number }[] {
  const step_deg = points.length > 0 ? 180 / points.length : 0;
  const stretches: { from_deg: number; to_deg: number }[] = [];
  for (const { bearing_deg, locked } of points) {
    if (!locked) continue;
    const last = stretches.at(-1);
    if (last && Math.abs(last.to_deg - bearing_deg) < 1e-6) last.to_deg = bearing_deg + step_deg;
    else stretches.push({ from_deg: bearing_deg, to_deg: bearing_deg + step_deg });
  }
  return stretches;
}

/** The point of the sweep nearest to a bearing, around 180 degrees. */
export function nearestPoint(points: readonly SweepPoint[], bearing_deg: number): SweepPoint | null {
  const apart = (point: SweepPoint) => Math.abs(((point.bearing_deg - bearing_deg + 270) % 180) - 90);
  return points.reduce<SweepPoint | null>((best, point) => (!best || apart(point) < apart(best) ? point : best), null);
}

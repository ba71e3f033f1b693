import { headOf_m } from "../hydraulics/pressure-head.ts";
import type { WaterSettings } from "../project/water-settings.ts";

/** What the source itself gives: pressure head at the gauge by the whole flow taken from it. */
export interface SourceLine {
  /** Flows ascending from 0, heads never rising. Past the last point nothing is known; one point: that head at any flow. */
  readonly points: readonly SourcePoint[];
  /** Between two points straight over the square of the flow, as what pipes lose is; else over the flow. */
  readonly isBent: boolean;
  /** Most that was measured, that a curve ends with or that is allowed; Infinity: not known. */
  readonly most_lps: number;
  /** With nothing flowing. */
  readonly closed_m: number;
}

export interface SourcePoint {
  readonly flow_lps: number;
  readonly head_m: number;
}

/**
 * What the source gives as it is stated; null while that does not tell both a pressure and a flow. Static pressure and bucket tests (those
 * of a tank or a town too) make a curve that falls with the square of the flow; a test without a pressure ran from an open outlet, at none.
 * Where two readings disagree the lower pressure counts.
 */
export function sourceLine(water: WaterSettings): SourceLine | null {
  if (water.kind === "unknown") return null;
  const limit_lps = water.limitFlow_lph === null ? Infinity : water.limitFlow_lph / 3600;
  const static_m = staticHead_m(water);
  const all = water.kind === "pump" ? pumpPoints(water) : testPoints(water);
  // Readings at closed valves alone tell no flow.
  const read = all.some(({ flow_lps }) => flow_lps > 0) ? all : [];
  // Of a town's static pressure alone nobody knows how much flows at it; a tank's level holds at any flow.
  if (read.length === 0 && (static_m === null || (water.kind !== "tank" && limit_lps === Infinity))) return null;
  const points = falling([...(static_m === null ? [] : [{ flow_lps: 0, head_m: static_m }]), ...read]);
  const [first] = points;
  const last = points.at(-1);
  if (first === undefined || last === undefined) return null;
  if (first.head_m <= 0) return null;
  return {
    points: first.flow_lps > 0 ? [{ flow_lps: 0, head_m: first.head_m }, ...points] : points,
    isBent: water.kind !== "pump",
    most_lps: Math.min(limit_lps, read.length === 0 ? Infinity : last.flow_lps),
    closed_m: static_m ?? beforeFirst_m(points, water.kind !== "pump"),
  };
}

/** Pressure head at the gauge while so much is taken from the source. */
export function sourceHead_m({ points, isBent }: SourceLine, flow_lps: number): number {
  const over = (flow: number) => (isBent ? flow * flow : flow);
  const [only] = points;
  const after = points.findIndex((point) => point.flow_lps >= flow_lps);
  const right = points[after < 0 ? points.length - 1 : Math.max(after, 1)];
  const left = points[after < 0 ? points.length - 2 : Math.max(after, 1) - 1];
  if (left === undefined || right === undefined) return only?.head_m ?? 0;
  const share = (over(flow_lps) - over(left.flow_lps)) / (over(right.flow_lps) - over(left.flow_lps));
  return left.head_m + share * (right.head_m - left.head_m);
}

function staticHead_m({ kind, staticPressure_kpa, tankLevel_m }: WaterSettings): number | null {
  if (kind === "tank") return tankLevel_m;
  return staticPressure_kpa === null ? null : headOf_m(staticPressure_kpa);
}

function testPoints({ tests }: WaterSettings): readonly SourcePoint[] {
  return tests.flatMap(({ volume_l, time_h, pressure_kpa }) =>
    volume_l > 0 && time_h > 0
      ? [{ flow_lps: volume_l / time_h / 3600, head_m: pressure_kpa === null ? 0 : headOf_m(pressure_kpa) }]
      : [],
  );
}

function pumpPoints({ pump }: WaterSettings): readonly SourcePoint[] {
  return pump.map(({ flow_lph, pressure_kpa }) => ({ flow_lps: flow_lph / 3600, head_m: headOf_m(pressure_kpa) }));
}

/** Two flows nearer to each other than this, L/s, are one. */
const sameFlow_lps = 1e-6;

/** By flow, one a flow, no head above that of a smaller flow. */
function falling(points: readonly SourcePoint[]): readonly SourcePoint[] {
  const kept: SourcePoint[] = [];
  for (const { flow_lps, head_m } of [...points].sort((a, b) => a.flow_lps - b.flow_lps)) {
    const before = kept.at(-1);
    const least_m = Math.min(head_m, before?.head_m ?? Infinity);
    if (before !== undefined && flow_lps - before.flow_lps < sameFlow_lps) {
      kept[kept.length - 1] = { ...before, head_m: least_m };
    } else kept.push({ flow_lps, head_m: least_m });
  }
  return kept;
}

/** Where the line through the first two points meets no flow: what closed valves may have to stand. */
function beforeFirst_m(points: readonly SourcePoint[], isBent: boolean): number {
  const [first, second] = points;
  if (first === undefined) return 0;
  if (second === undefined) return first.head_m;
  const over = (flow: number) => (isBent ? flow * flow : flow);
  const fall = (first.head_m - second.head_m) / (over(second.flow_lps) - over(first.flow_lps));
  return first.head_m + fall * over(first.flow_lps);
}

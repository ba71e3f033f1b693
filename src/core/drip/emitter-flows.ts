import { si } from "../project/si.ts";

/** Flows that emitters are sold with, the largest first. Common practice, no source. */
const inGallons = ["2 gal/h", "1 gal/h", "0.6 gal/h", "0.5 gal/h", "0.4 gal/h", "0.26 gal/h"].map((flow) =>
  si("flow", flow),
);
const inLitres = [8, 4, 3, 2.3, 2, 1.6, 1.2, 1, 0.7];

/** Below this an emitter's passages want a finer filter. Common practice, no source. */
const narrow_lph = si("flow", "0.5 gal/h");

/** Emitters smaller than one, the nearest first, by gallons where it is a size of those. */
export function smallerFlows(flow_lph: number): readonly number[] {
  return sold(flow_lph).filter((each) => each < flow_lph * (1 - 1e-3));
}

/** Emitters larger than one, the nearest first. */
export function largerFlows(flow_lph: number): readonly number[] {
  return [...sold(flow_lph)].reverse().filter((each) => each > flow_lph * (1 + 1e-3));
}

/** True when an emitter's passages want a finer filter than is usual. */
export function wantsFinerFilter(flow_lph: number): boolean {
  return flow_lph < narrow_lph * (1 - 1e-3);
}

function sold(flow_lph: number): readonly number[] {
  const isGallons = inGallons.some((each) => Math.abs(each - flow_lph) < 1e-6 * each);
  return isGallons ? inGallons : inLitres;
}

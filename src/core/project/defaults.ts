import { parseQuantity, type QuantityKind, type UnitSystem } from "../units.ts";
import type { DripSettings, GroundSettings, MaterialSettings, RowSettings, TrellisSettings } from "./project.ts";

/** What stands in for settings that are not stated. The end gap is worked out from the vine spacing. */
export interface Defaults {
  readonly ground: GroundSettings;
  readonly rows: Omit<RowSettings, "endGap_m">;
  readonly trellis: TrellisSettings;
  readonly drip: DripSettings;
  readonly materials: MaterialSettings;
}

/** Half a vine spacing, so that the end post stands like a vine would, but at least 3 ft: room to brace it. Common practice, no source. */
export function defaultEndGap_m(vineSpacing_m: number): number {
  return Math.max(vineSpacing_m / 2, si("length", "3 ft"));
}

function si(kind: QuantityKind, text: string): number {
  const parsed = parseQuantity(kind, text);
  if (!parsed.ok) throw new Error(`default "${text}": ${parsed.reason}`);
  return parsed.value;
}

function defaultsIn(units: UnitSystem): Defaults {
  const length = (metric: string, us: string): number => si("length", units === "us" ? us : metric);
  // Common practice, no source, unless a line says otherwise; round numbers of each unit system, so the two differ a little.
  return {
    ground: {
      setback_m: length("3 m", "10 ft"),
      obstacleDistance_m: length("3 m", "10 ft"),
      noPlantDistance_m: length("3 m", "10 ft"),
      alleyWidth_m: length("6 m", "20 ft"),
    },
    rows: {
      bearing: { kind: "edge", edge: "longest" },
      rowSpacing_m: length("2.4 m", "8 ft"),
      vineSpacing_m: length("1.8 m", "6 ft"),
      headland_m: length("9 m", "30 ft"),
      rowOne: { kind: "centred" },
      firstSide: "left",
      minRow: { kind: "length", length_m: length("15 m", "50 ft") },
      rowEnd: "vines",
      trim: "both",
      vines: "centred",
      // A bay of about 24 ft.
      bay_vines: 4,
      bays: "whole-vines",
      distancesTo: "end-post",
      anchorOut_m: length("1.5 m", "5 ft"),
      lockedBearings: [],
      // What two end posts, anchors and tie-offs cost, as a length of row.
      rowCost_m: 12,
    },
    trellis: {
      // Drip wire under a fruiting wire and a second one 8 in above it. Gauge diameter as read in three tables (units/wire-gauge.ts).
      wires: [
        { purpose: "drip", height_m: si("length", "18 in"), diameter_mm: si("diameter", "13 ga"), count: 1 },
        { purpose: "fruiting", height_m: si("length", "36 in"), diameter_mm: si("diameter", "13 ga"), count: 1 },
        { purpose: "fruiting", height_m: si("length", "44 in"), diameter_mm: si("diameter", "13 ga"), count: 1 },
      ],
      // A gripper takes 0.6 to 0.75 m; a loop twice round a 5 in post 0.80 m and its wraps (worked out, about 1.0 m in all).
      tieOffStart: { kind: "gripper", allowance_m: 0.75 },
      tieOffEnd: { kind: "loop", allowance_m: 1 },
      stakesPerVine: 1,
    },
    drip: { emitterFlow_lph: si("flow", "0.5 gal/h"), emittersPerVine: 1, overrun_m: si("length", "2 ft") },
    materials: {
      wireCoil_m: si("length", "1000 ft"),
      hoseCoil_m: si("length", "500 ft"),
      stakeClipBag: 200,
      hoseClipBag: 500,
      emitterBag: 100,
      vineSpare_ratio: 0.02,
      clipSpare_ratio: 0.05,
      emitterSpare_ratio: 0.05,
      linePostSpare_ratio: 0.02,
      endPostSpare: 1,
    },
  };
}

/** The defaults of each unit system. */
export const defaults: Readonly<Record<UnitSystem, Defaults>> = { metric: defaultsIn("metric"), us: defaultsIn("us") };

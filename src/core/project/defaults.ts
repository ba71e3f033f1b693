import { pipeSizes } from "../hydraulics/pipe-sizes.ts";
import type { UnitSystem } from "../units.ts";
import type {
  GroundSettings,
  MainLineSettings,
  MaterialSettings,
  PostSettings,
  RowSettings,
  TieOff,
  TrellisSettings,
  TrenchSettings,
  Wire,
  WirePurpose,
} from "./project.ts";
import { si } from "./si.ts";
import { usualCover_m } from "./usual-cover.ts";
import { usualWire } from "./usual-wire.ts";
import { usualDrip, usualSeason, usualSets, usualWater } from "./water-defaults.ts";
import type { DripSettings, SeasonSettings, SetSettings, WaterSettings } from "./water-settings.ts";

/** What stands in for settings that are not stated. The end gap is worked out from the vine spacing. */
export interface Defaults {
  readonly ground: GroundSettings;
  readonly mainLine: MainLineSettings;
  readonly trench: TrenchSettings;
  readonly water: WaterSettings;
  readonly sets: SetSettings;
  readonly season: SeasonSettings;
  readonly rows: Omit<RowSettings, "endGap_m">;
  readonly trellis: TrellisSettings;
  readonly drip: DripSettings;
  readonly materials: MaterialSettings;
}

/** Half a vine spacing, so that the end post stands like a vine would, but at least 3 ft: room to brace it. Common practice, no source. */
export function defaultEndGap_m(vineSpacing_m: number): number {
  return Math.max(vineSpacing_m / 2, si("length", "3 ft"));
}

// A gripper takes 0.6 to 0.75 m; what a loop takes follows from the post's girth.
const gripper: TieOff = { kind: "gripper", allowance_m: null };
const loop: TieOff = { kind: "loop", allowance_m: null };

function wire(purpose: WirePurpose, height: string): Wire {
  return usualWire(
    { purpose, height_m: si("length", height), diameter_mm: si("diameter", "13 ga") },
    { tieOffStart: gripper, tieOffEnd: loop },
  );
}

function post(diameter: string, embedment_m: number): PostSettings {
  return {
    holds: "staple",
    diameter_mm: si("diameter", diameter),
    embedment_m,
    above_m: si("length", "4 in"),
    length_m: null,
    firstNotch_m: si("length", "12 in"),
    notchPitch_m: si("length", "4 in"),
  };
}

/** Paces, ranges and habits: common practice, no source. Soil bearing: silt loam, the lower of two published tables (handbook, section 7). */
function trench(units: UnitSystem): TrenchSettings {
  const length = (metric: string, us: string): number => si("length", units === "us" ? us : metric);
  const pipe = pipeSizes.find(({ size }) => size === (units === "us" ? "pvc-40-2in" : "pvc-pn10-50mm"));
  if (pipe === undefined) throw new Error("the usual pipe is in no table");
  const { size, outside_mm, inside_mm, stick_m, joint } = pipe;
  return {
    pipe: { size, outside_mm, inside_mm, stick_m, joint },
    cover_m: usualCover_m(outside_mm),
    frostDepth_m: null,
    grade_ratio: null,
    bedding_m: 0,
    tool: "trencher",
    width_m: null,
    sideSlope_ratio: 0,
    turningRoom_m: length("3 m", "10 ft"),
    dug: "before-posts",
    soil: "loam",
    swell_ratio: null,
    stationStep_m: length("5 m", "20 ft"),
    leastLow_m: 0.15,
    dugPerHour_m: null,
    laidPerHour_m: [length("20 m", "65 ft"), length("40 m", "130 ft")],
    hoursADay_h: 8,
    people: 2,
    testPressure_kpa: si("pressure", units === "us" ? "100 psi" : "6 bar"),
    soilBearing_kpa: si("pressure", "750 psf"),
  };
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
      // Above 7.5 to 10 % across is the upper limit of ordinary equipment (calculation handbook, section 10).
      steepestAlong_ratio: 0.15,
      steepestAcross_ratio: 0.08,
      heights: "triangles",
    },
    mainLine: {
      source: null,
      lane: "beyond",
      postDistance_m: length("1 m", "3 ft"),
      obstacleDistance_m: length("2 m", "6 ft"),
      noPlantDistance_m: length("1 m", "3 ft"),
      boundaryDistance_m: length("1 m", "3 ft"),
      pins: [],
      trenchPrice_pm: null,
      crossingPrice: null,
      crossingAs_m: length("15 m", "50 ft"),
    },
    trench: trench(units),
    water: usualWater(units),
    sets: usualSets(units),
    season: usualSeason,
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
      wires: [wire("drip", "18 in"), wire("fruiting", "36 in"), wire("fruiting", "44 in")],
      tieOffStart: gripper,
      tieOffEnd: loop,
      endAssembly: {
        kind: "vertical",
        // Leaning posts: about 60 degrees from the ground (Iowa State University, Domoto, "Constructing a Vineyard Trellis", 2002).
        postAngle_deg: 60,
        leanDirection: "out",
        tieHeight_m: null,
        braceHeight_m: null,
        braceLength_m: null,
        tieWire_mm: si("diameter", units === "us" ? "12.5 ga" : "2.5 mm"),
        tieStrands: 2,
        concreteHole_m: null,
        // A bag of 25 kg or 60 lb of dry mix, from memory.
        concreteBag_l: 12.5,
      },
      // End posts at least 5 in thick and 3 to 4 ft deep, line posts 3 to 4 in and 2 ft deep (the same slides of 2002).
      endPost: post(units === "us" ? "5 in" : "120 mm", length("0.9 m", "3 ft")),
      linePost: post(units === "us" ? "3.5 in" : "80 mm", length("0.6 m", "2 ft")),
      stake: { embedment_m: length("0.3 m", "1 ft"), above_m: si("length", "1 in"), length_m: null },
      stakesPerVine: 1,
      postLengths_m:
        units === "us"
          ? [6, 7, 8, 9, 10, 12, 14].map((feet) => si("length", `${feet} ft`))
          : [1.8, 2, 2.2, 2.4, 2.6, 2.8, 3, 3.5, 4],
      stakeLengths_m:
        units === "us" ? [4, 5, 6, 7, 8].map((feet) => si("length", `${feet} ft`)) : [1.2, 1.5, 1.8, 2.1, 2.4],
      frostDepth_m: null,
      cropPerVine_kg: null,
      tensionedAt_c: si("temperature", units === "us" ? "60 F" : "15 C"),
      coldest_c: si("temperature", units === "us" ? "15 F" : "-10 C"),
      hottest_c: si("temperature", units === "us" ? "105 F" : "40 C"),
      anchorCapacity_n: null,
      leastClearance_m: length("0.25 m", "10 in"),
      warnShare_ratio: 1 / 3,
      mostShare_ratio: 1 / 2,
    },
    drip: usualDrip(units),
    materials: {
      wireCoils_m: [si("length", "1000 ft")],
      hoseCoils_m: [si("length", "500 ft")],
      cutting: {
        // Coils run short, and kinks and the last turns are lost; wire is cut past the post, not measured.
        reserve_ratio: 0.01,
        reserve_m: 2,
        slop_m: 0.3,
        wireJoins: "allowed",
        hoseJoins: "allowed",
        joinLength_m: 0.3,
        wireJoinPrice: null,
        hoseJoinPrice: null,
        heaviestCoil_kg: null,
      },
      stakeClipBag: 200,
      hoseClipBag: 500,
      emitterBag: 100,
      stapleBag: 500,
      vineSpare_ratio: 0.02,
      clipSpare_ratio: 0.05,
      emitterSpare_ratio: 0.05,
      linePostSpare_ratio: 0.02,
      gripperSpare_ratio: 0.05,
      stakeSpare_ratio: 0,
      endPostSpare: 1,
      onHand: [],
      prices: [],
      currency: null,
    },
  };
}

/** The defaults of each unit system. */
export const defaults: Readonly<Record<UnitSystem, Defaults>> = {
  metric: defaultsIn("metric"),
  us: defaultsIn("us"),
  "metric-bar": defaultsIn("metric"),
  "metric-head": defaultsIn("metric"),
};

/** What the person knows of the water, and what the drip system is to do with it. SI; see the settings of the file in DEVELOPERS.md. */

/** How the water is known: not yet, by static pressure and bucket tests, by pump points, by the level of a tank, by what a town gives. */
export const waterKinds = ["unknown", "measured", "pump", "tank", "town"] as const;
export type WaterKind = (typeof waterKinds)[number];

/** A bucket filled while a gauge was read beside it. */
export interface BucketTest {
  readonly volume_l: number;
  readonly time_h: number;
  /** At the gauge while it flowed; null: not read. */
  readonly pressure_kpa: number | null;
}

/** One point of a pump's curve, at the place where the gauge is. */
export interface PumpPoint {
  readonly flow_lph: number;
  readonly pressure_kpa: number;
}

/** What stands between the water and the main line, in the order water meets it; a controller, valve boxes and wire follow from the sets. */
export const headWorkKinds = [
  "isolating-valve",
  "backflow-device",
  "check-valve",
  "filter",
  "regulator",
  "gauge",
  "flow-meter",
  "air-vent",
  "injector-port",
] as const;
export type HeadWorkKind = (typeof headWorkKinds)[number];

export interface HeadWork {
  readonly kind: HeadWorkKind;
  /** Lost in it, clean. */
  readonly loss_kpa: number;
  /** Lost when it is due for cleaning: filters. Else as `loss_kpa`. */
  readonly dirtyLoss_kpa: number;
  /** Flow at which that is lost: losses grow with its square; null: lost at any flow. */
  readonly atFlow_lph: number | null;
  /** What a regulator lets through at most; null for all else. */
  readonly outlet_kpa: number | null;
}

/** The water you have: one for the whole project. */
export interface WaterSettings {
  readonly kind: WaterKind;
  /** With nothing flowing: measured, town. */
  readonly staticPressure_kpa: number | null;
  readonly tests: readonly BucketTest[];
  readonly pump: readonly PumpPoint[];
  /** Less than this the pump does not hold steady: it cycles. */
  readonly leastFlow_lph: number | null;
  /** Surface of the water, at the lowest it is used, above the place of the source. */
  readonly tankLevel_m: number | null;
  /** Stated most that the town, or whoever gives the water, allows. */
  readonly limitFlow_lph: number | null;
  /** Taken by others (house, stock) at the same time. */
  readonly others_lph: number;
  readonly hoursADay_h: number;
  /** What comes back in the long run: a well's recovery; null: not known. */
  readonly recovery_lph: number | null;
  /** Stored between source and field, or in the well; null: none. */
  readonly stored_l: number | null;
  /** Height of the gauge among the heights of the project; null: the ground at the source. */
  readonly height_m: number | null;
  /** Share of the flow that is not counted on. */
  readonly margin_ratio: number;
  readonly headWorks: readonly HeadWork[];
  /** How long a valve takes to close. */
  readonly closing_h: number;
  /** Of the water, for friction and for what plastic stands. */
  readonly temperature_c: number;
}

/** A law of friction. `darcy-weisbach`: laminar and Blasius; `epanet`: Darcy-Weisbach as EPANET has it (Swamee-Jain, and between). */
export const frictionLaws = ["darcy-weisbach", "hazen-williams", "epanet"] as const;
export type FrictionLawName = (typeof frictionLaws)[number];

export const emitterKinds = ["plain", "compensating"] as const;
export type EmitterKind = (typeof emitterKinds)[number];

/** Punched into the hose at every vine, or built in at a fixed spacing. */
export const emitterPlacings = ["on-line", "in-line"] as const;
export type EmitterPlacing = (typeof emitterPlacings)[number];

/** How far the barbs stand into the hose. */
export const barbSizes = ["none", "small", "standard", "large"] as const;
export type BarbSize = (typeof barbSizes)[number];

/** Drip of one block. */
export interface DripSettings {
  /** Flow of one emitter at its nominal pressure. */
  readonly emitterFlow_lph: number;
  /** On-line emitters at a vine. */
  readonly emittersPerVine: number;
  readonly emitterPressure_kpa: number;
  readonly emitterKind: EmitterKind;
  /** x of q = k h^x; of a compensating one within its range. */
  readonly emitterExponent: number;
  /** Manufacturing variation: standard deviation over mean. */
  readonly emitterVariation_ratio: number;
  /** Working range of a compensating emitter; the most any emitter stands. */
  readonly emitterLeast_kpa: number;
  readonly emitterMost_kpa: number;
  readonly emitterPlacing: EmitterPlacing;
  /** On-line: from the trunk along the hose. */
  readonly emitterOffset_m: number;
  /** In-line: from one to the next. */
  readonly emitterSpacing_m: number;
  readonly barb: BarbSize;
  /** Hose past the last vine. */
  readonly overrun_m: number;
  /** Hose is longer than its row by this share, for it shrinks in the cold. */
  readonly slack_ratio: number;
  readonly hoseInside_mm: number;
  readonly hoseOutside_mm: number;
  readonly hoseMost_kpa: number;
  readonly riserInside_mm: number;
  /** Of hose and riser. */
  readonly friction: FrictionLawName;
  /** C of Hazen-Williams, for hose. */
  readonly hoseRoughness: number;
  /** Emission uniformity that is asked for, as a share. */
  readonly evenness_ratio: number;
}

/** A cock on each row; a valve and a submain for each set; valves at the source with a pipe for each set. */
export const valvePatterns = ["cock-a-row", "valve-a-set", "valves-at-source"] as const;
export type ValvePattern = (typeof valvePatterns)[number];

export const setBorders = ["rows", "blocks", "varieties"] as const;
export type SetBorder = (typeof setBorders)[number];

/** Rows that the person puts in one set. */
export interface SetPin {
  readonly block: string | null;
  readonly fromRow: number;
  readonly toRow: number;
  /** Number of the set, from 1. */
  readonly set: number;
}

/** `chosen`: at least cost for the water there is; `as-set`: the trench's pipe everywhere. */
export const pipeSizings = ["chosen", "as-set"] as const;
export type PipeSizing = (typeof pipeSizings)[number];

export const pipeFamilies = ["pvc-40", "pvc-sdr21", "pvc-sdr26", "pvc-pn10", "pvc-pn6", "pe100-sdr17"] as const;
export type PipeFamily = (typeof pipeFamilies)[number];

/** Rows watered together, and the pipes to them: one for the whole project. */
export interface SetSettings {
  readonly pattern: ValvePattern;
  /** Sets that are wanted; null: the fewest that the water feeds. */
  readonly count: number | null;
  readonly follow: SetBorder;
  readonly pins: readonly SetPin[];
  /** A regulator at every set's valve (at every row's cock with cocks); null: none. */
  readonly regulator_kpa: number | null;
  /** Valves opened by hand, or by a controller through wires. */
  readonly control: "hand" | "controller";
  readonly sizing: PipeSizing;
  readonly family: PipeFamily;
  readonly mostVelocity_mps: number;
  readonly friction: FrictionLawName;
  /** C of Hazen-Williams, for pipe. */
  readonly roughness: number;
}

/** Reference evapotranspiration from temperatures: by eq. 6 of FAO-56 with what is missing estimated, or by eq. 52. */
export const evapotranspirationMethods = ["penman-monteith", "hargreaves"] as const;
export type EvapotranspirationMethod = (typeof evapotranspirationMethods)[number];

/** Twelve months, January first. */
export type Monthly = readonly number[];

/** Water through the year: one for the whole project. */
export interface SeasonSettings {
  /** Reference evapotranspiration, mm a day; null: from temperatures, or not known. */
  readonly reference_mmpd: Monthly | null;
  readonly lowest_c: Monthly | null;
  readonly highest_c: Monthly | null;
  readonly method: EvapotranspirationMethod;
  /** Rain in mm a month; null: none is reckoned with. */
  readonly rain_mm: Monthly | null;
  /** Share of the rain that reaches the roots. */
  readonly rainShare_ratio: number;
  /** Crop coefficients of grown vines: at the start, in full leaf, at the end. */
  readonly cropStart: number;
  readonly cropMid: number;
  readonly cropEnd: number;
  /** Bud break, full leaf, first colour, leaf fall: months from 1, with parts (4.5 is the middle of April). */
  readonly stages: readonly [budBreak: number, fullLeaf: number, ripening: number, leafFall: number];
  /** Ground shaded at noon in full leaf; known, it takes the place of the mid coefficient; null: not known. */
  readonly shaded_ratio: number | null;
  /** What is given of the full need: usual, and at peak. */
  readonly usualShare_ratio: number;
  readonly peakShare_ratio: number;
  /** Water that the soil holds for roots, mm in a metre, how deep they go, and how far it is let down. */
  readonly soil_mmpm: number;
  readonly roots_m: number;
  readonly depletion_ratio: number;
  /** Share of the need of grown vines that young ones have. */
  readonly young_ratio: number;
  /** Share that runs through to wash salt out. */
  readonly leaching_ratio: number;
}

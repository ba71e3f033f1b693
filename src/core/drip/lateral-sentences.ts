import { type Finding, listed, type Quantity, quantity, say, unplaced } from "../finding.ts";
import type { LonLat } from "../plane/coordinate.ts";
import type { DripSettings } from "../project/water-settings.ts";
import { rowsNamed } from "../rows/rows-named.ts";
import type { Evenness } from "./watering.ts";

/* The findings of laterals and emitters, one function a code. `of`: " of Block 2" where there are several blocks. */

/** Small emitters clog. */
export function fineEmitter(of: string, flow_lph: number, fine_lph: number): Finding {
  return unplaced(
    "drip/fine-emitter",
    "note",
    say`The emitters${of} give ${quantity("flow", flow_lph)}, less than ${quantity("flow", fine_lph)}.`,
    say`The ways inside so small an emitter are narrow and clog sooner.`,
    say`Take a finer filter, as the maker of the emitter says, and flush the hoses often.`,
  );
}

/** The settings of an emitter contradict each other. */
export function rangeUnlikely(
  of: string,
  { emitterPressure_kpa, emitterLeast_kpa, emitterMost_kpa }: DripSettings,
  isCompensating: boolean,
): Finding {
  return unplaced(
    "drip/emitter-range",
    "warning",
    emitterPressure_kpa > emitterMost_kpa
      ? say`The nominal pressure of the emitters${of} is ${quantity("pressure", emitterPressure_kpa)}, more than the ${quantity("pressure", emitterMost_kpa)} that they stand.`
      : say`The range of the emitters${of} begins at ${quantity("pressure", emitterLeast_kpa)} and ends at ${quantity("pressure", emitterMost_kpa)}.`,
    say`At the pressure they are to have they would burst or blow off.`,
    isCompensating
      ? say`Read the range and the nominal pressure off the maker's sheet: one of them is mistyped, or in another unit.`
      : say`Read both off the maker's sheet: one of them is mistyped, or in another unit.`,
  );
}

/** No pipe makes emitters more even than they are made. */
export function evennessOutOfReach(
  of: string,
  best_ratio: number,
  { evenness_ratio, emitterVariation_ratio }: DripSettings,
): Finding {
  return unplaced(
    "drip/evenness-out-of-reach",
    "warning",
    say`The emitters${of} vary by ${quantity("ratio", emitterVariation_ratio)} as they are made, so even at equal pressure an evenness of ${share(best_ratio)} is the best; ${quantity("ratio", evenness_ratio)} is asked for.`,
    say`Wider pipe or shorter rows cannot mend that.`,
    say`Take emitters that are made more alike, put two smaller ones at each vine, or ask for less.`,
  );
}

/** Rows that are uneven by themselves. */
export function rowsTooLong(
  at: LonLat | null,
  rows: readonly string[],
  worst_ratio: number,
  longest_m: number | null,
): Finding {
  return {
    code: "drip/row-uneven",
    severity: "warning",
    at,
    feature: null,
    message: say`By ${rows.length === 1 ? "itself" : "themselves"} ${rowsNamed(rows)} ${rows.length === 1 ? "is" : "are"} less even than asked for: ${share(worst_ratio)} at the worst.`,
    reason: [
      ...say`Some vines get clearly less than others of the same row, however wide the main line is.`,
      ...(longest_m === null
        ? []
        : say` With its hose and on its slope a row of about ${quantity("length", longest_m)} keeps the evenness.`),
    ],
    remedy: say`Take wider hose, smaller emitters or pressure-compensating ones, or feed the row from its upper end.`,
  };
}

/** A set that is less even than asked for. */
export function setUneven(
  at: LonLat | null,
  name: string,
  { emission_ratio, variation_ratio }: Evenness,
  asked_ratio: number,
  [from, to]: readonly [from: number, to: number],
): Finding {
  return {
    code: "drip/set-uneven",
    severity: "warning",
    at,
    feature: null,
    message: say`Set ${name} is ${share(emission_ratio)} even; ${quantity("ratio", asked_ratio)} is asked for. Its emitters differ by up to ${share(variation_ratio)}.`,
    reason: say`To give the driest vine enough the others get too much. Published practice recommends to design for ${quantity("ratio", from)} to ${quantity("ratio", to)} on such ground.`,
    remedy: say`Take pressure-compensating emitters or a regulator at the set's valve, wider pipe, or more sets, so that rows with like pressures run together.`,
  };
}

/** Emitters above the water's reach. */
export function emittersDry(at: LonLat | null, sets: readonly string[], dry: number, rows: readonly string[]): Finding {
  return {
    code: "drip/emitters-dry",
    severity: "warning",
    at,
    feature: null,
    message: say`In ${sets.length === 1 ? "set" : "sets"} ${listed(sets)} ${dry} ${dry === 1 ? "emitter gets" : "emitters get"} no water, in ${rowsNamed(rows)}.`,
    reason: say`The pressure does not reach so far or so high while the whole set runs.`,
    remedy: say`Make more sets, take wider pipe or smaller emitters, or raise the pressure of the water.`,
  };
}

/** Compensating emitters that do not compensate. */
export function pressureBelowRange(
  at: LonLat | null,
  name: string,
  rows: readonly string[],
  lowest_kpa: number,
  least_kpa: number,
): Finding {
  return {
    code: "drip/emitters-below-range",
    severity: "warning",
    at,
    feature: null,
    message: say`In set ${name} emitters of ${rowsNamed(rows)} have as little as ${quantity("pressure", lowest_kpa)}; they hold their flow from ${quantity("pressure", least_kpa)} on.`,
    reason: say`Below their range compensating emitters give less, and unevenly.`,
    remedy: say`Make more sets, take wider pipe, or raise the pressure of the water.`,
  };
}

/** No hose of a set can be flushed while it runs. */
export function flushNone(at: LonLat | null, name: string): Finding {
  return {
    code: "drip/flush-none",
    severity: "note",
    at,
    feature: null,
    message: say`While set ${name} runs the water does not suffice to flush even one of its hoses.`,
    reason: say`The end of a hose is clean only when water runs through it fast, ${quantity("speed", 0.3)} or more.`,
    remedy: say`Close some rows by a cock or a clamp while you flush the others, one hose after another.`,
  };
}

/** Rows that are left out. */
export function rowsWithoutWater(at: LonLat | null, rows: readonly string[]): Finding {
  return {
    code: "drip/rows-without-water",
    severity: "warning",
    at,
    feature: null,
    message: say`No set waters ${rowsNamed(rows)}: no trench gets to ${rows.length === 1 ? "it" : "them"}.`,
    reason: say`The vines there stay dry, and what they need is not reckoned in any set.`,
    remedy: say`Let the main line reach them: draw it there, allow a crossing, or water them by other means.`,
  };
}

/** Pressures are reckoned as on level ground. */
export function heightsUnknown(): Finding {
  return unplaced(
    "drip/heights-unknown",
    "note",
    say`Not all heights of source, main line and rows are known; where they are not, the ground counts as level with the source.`,
    say`Each ${quantity("length", 1)} of rise takes ${quantity("pressure", 9.80665)} of pressure, and each one of fall adds it, so real pressures differ.`,
    say`Add a height grid, spot heights at the source and the ends of rows, or a track with heights.`,
  );
}

/** To a tenth of a percent, rather less: what falls short by little must not read as if it did not. */
function share(ratio: number): Quantity {
  return quantity("ratio", Math.floor(1000 * ratio + 1e-9) / 1000);
}

import { type Finding, listed, type Phrase, quantity, say } from "../finding.ts";
import { pressureOf_kpa } from "../hydraulics/pressure-head.ts";
import type { LonLat } from "../plane/coordinate.ts";
import { rowsNamed } from "../rows/rows-named.ts";

function placed(
  code: Finding["code"],
  severity: Finding["severity"],
  at: LonLat | null,
  message: Phrase,
  reason: Phrase,
  remedy: Phrase,
): Finding {
  return { code, severity, at, feature: null, message, reason, remedy };
}

/** Not every row gets what it needs. */
export function shortOfWater(at: LonLat | null, set: string, row: string, short_m: number): Finding {
  return placed(
    "drip/short-of-water",
    "warning",
    at,
    say`There is not enough water: in set ${set} row ${row} lacks ${quantity("pressure", pressureOf_kpa(short_m))} of the pressure it needs.`,
    say`Its emitters give less than they should, or do not hold their flow; the reserve that is not counted on is kept out of this.`,
    say`See what is advised below: more sets, a smaller emitter, wider pipe, or a tank or pump.`,
  );
}

/** Sets that take more than may be counted on. */
export function setsTakeTooMuch(
  at: LonLat | null,
  sets: readonly string[],
  flow_lps: number,
  most_lps: number,
): Finding {
  return placed(
    "drip/set-above-supply",
    "warning",
    at,
    say`Set ${listed(sets)} ${sets.length === 1 ? "takes" : "take"} up to ${quantity("flow", flow_lps * 3600)}, more than the ${quantity("flow", most_lps * 3600)} that may be counted on.`,
    say`The pressure falls below what was measured, and nobody knows what is left of it.`,
    say`Let the number of sets follow from the water, or take a smaller reserve if you are sure of it.`,
  );
}

/** Plain emitters at more than their nominal pressure, which takes the water beyond what it gives. */
export function pressureTakesMore(
  at: LonLat | null,
  sets: readonly string[],
  flow_lps: number,
  most_lps: number,
): Finding {
  return placed(
    "drip/pressure-takes-more",
    "warning",
    at,
    say`At the pressure that is there set ${listed(sets)} ${sets.length === 1 ? "takes" : "take"} up to ${quantity("flow", flow_lps * 3600)}; the water gives ${quantity("flow", most_lps * 3600)}.`,
    say`Emitters that do not compensate give more the higher the pressure is, more than their nominal flow and than may be taken.`,
    say`Put a regulator at each set's valve, set a little above what the emitters want, or take compensating emitters.`,
  );
}

/** Rows that take more than the water gives even one by one. */
export function rowsAboveSupply(
  at: LonLat | null,
  rows: readonly string[],
  flow_lps: number,
  most_lps: number,
): Finding {
  return placed(
    "drip/row-above-supply",
    "warning",
    at,
    say`Even alone ${rowsNamed(rows)} ${rows.length === 1 ? "takes" : "take"} up to ${quantity("flow", flow_lps * 3600)}, more than the ${quantity("flow", most_lps * 3600)} that may be counted on.`,
    say`No number of sets helps a row that is more than the water gives.`,
    say`Take a smaller emitter, divide such a row by a cross alley, or put a tank between.`,
  );
}

/** Regulators that let through less than a row needs. */
export function regulatorTooLow(
  at: LonLat | null,
  rows: readonly string[],
  regulator_kpa: number,
  short_m: number,
): Finding {
  return placed(
    "drip/regulator-too-low",
    "warning",
    at,
    say`Behind the regulators of ${quantity("pressure", regulator_kpa)} ${rowsNamed(rows)} ${rows.length === 1 ? "lacks" : "lack"} up to ${quantity("pressure", pressureOf_kpa(short_m))}.`,
    say`What a regulator holds back is lost to these rows, whatever the source gives.`,
    say`Set it higher by that and a little more, as far as hose and emitters stand it.`,
  );
}

/** A pump does not hold so little steady. */
export function setsBelowLeast(
  at: LonLat | null,
  sets: readonly string[],
  flow_lps: number,
  least_lps: number,
  fewer: number,
): Finding {
  return placed(
    "drip/set-below-least",
    "warning",
    at,
    say`Set ${listed(sets)} ${sets.length === 1 ? "takes" : "take"} only ${quantity("flow", flow_lps * 3600)}; the pump holds no less than ${quantity("flow", least_lps * 3600)} steady.`,
    say`It switches on and off all the time, which wears it out and makes the pressure jump.`,
    fewer > 0
      ? say`With ${fewer} ${fewer === 1 ? "set" : "sets"} each would take about enough, if the water feeds them; else a pressure tank or a return line takes up the rest.`
      : say`A pressure tank or a return line takes up the rest.`,
  );
}

/** Pipe that water runs through faster than it should. */
export function runsFast(at: LonLat | null, velocity_mps: number, most_mps: number, size: string): Finding {
  return placed(
    "drip/fast-water",
    "note",
    at,
    say`Water runs through pipe ${size} at ${quantity("speed", velocity_mps)}, faster than ${quantity("speed", most_mps)}.`,
    say`The faster it runs, the harder it hits when a valve closes.`,
    say`Take wider pipe there, more sets, or close valves very slowly.`,
  );
}

/** The line rises above what pushes the water. */
export function aboveHead(at: LonLat | null, by_m: number): Finding {
  return placed(
    "drip/line-above-water",
    "warning",
    at,
    say`Here the line stands ${quantity("length", by_m)} above where its water would rise to.`,
    say`The pipe sucks air there, and the rows behind it get little or nothing.`,
    say`Lead the line around the rise, take wider pipe before it, or raise the pressure.`,
  );
}

/** Rows that are not in the set they were put in. */
export function pinsNotKept(at: LonLat | null, rows: readonly string[]): Finding {
  return placed(
    "drip/pins-not-kept",
    "warning",
    at,
    say`${capital(rowsNamed(rows))} could not be put in the ${rows.length === 1 ? "set" : "sets"} asked for.`,
    say`There are not rows enough to give every set up to that number one, or what is put together crosses a border that sets follow.`,
    say`Give a lower number, put more rows in sets by hand, or let sets follow rows alone.`,
  );
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

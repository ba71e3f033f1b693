import type { Plan } from "../plan.ts";
import { formatQuantity, type UnitSystem } from "../units.ts";

/** The check of the first run as a page to print: what to do in order, and what the cups and the gauge should show. */
export interface FirstRunSheet {
  readonly title: string;
  readonly steps: readonly string[];
  readonly checks: readonly FirstRunCheck[];
  readonly cautions: readonly string[];
}

export interface FirstRunCheck {
  readonly set: string;
  readonly row: string;
  /** What runs into a cup in three minutes: first, middle and last vine from the water end on. */
  readonly cups: readonly { readonly at: string; readonly emitter: number; readonly volume: string }[];
  /** At the far end of the hose. */
  readonly tail: string;
}

const places = ["first vine", "middle vine", "last vine"] as const;

/** Words and numbers of the first run in the units asked for; null while no set is worked out. */
export function firstRunSheet({ project, watering: watered, rows }: Plan, units: UnitSystem): FirstRunSheet | null {
  const watering = watered?.watering ?? null;
  if (watered === null || watering === null || watering.firstRun.length === 0) return null;
  const { laterals } = watered.job;
  const longest_h = watering.sets.reduce((most_h, { fill_h }) => Math.max(most_h, fill_h), 0);
  const fewest = watering.sets.reduce((least, { flushable }) => Math.min(least, flushable), Infinity);
  return {
    title: `${project.name}, first run`,
    steps: [
      "Flush first: open the ends of the main line and of the submains, then of the hoses, and let the water run until it is clear.",
      fewest > 0
        ? `Flush no more than ${fewest} ${fewest === 1 ? "hose" : "hoses"} of a set at once, or the water does not carry the dirt out.`
        : "The water does not suffice to flush a hose while all others of its set run: shut some rows while you flush one after another.",
      `Close the ends, run one set, and wait until the gauges stand still: it takes up to ${formatQuantity("time", longest_h, units)} to fill.`,
      "Hold a cup under the emitter of each vine below for three minutes by the watch, and read a gauge at the far end of the hose.",
      "Write beside each number what you found. A tenth less or more is as it should be. Less at the last vine only: look for a kink or a leak. Less everywhere: clean the filter and read the gauge at the source.",
    ],
    checks: watering.firstRun.map(({ set, lateral, cups, tail_kpa }) => ({
      set: watering.sets[set]?.name ?? "",
      row: rows?.rows[laterals.row[lateral] ?? -1]?.id ?? "",
      cups: cups.map(({ emitter, volume_l }, i) => ({
        at: i === cups.length - 1 && i > 0 ? places[2] : (places[i] ?? ""),
        emitter: emitter - (laterals.offsets[lateral] ?? 0) + 1,
        volume: formatQuantity("volume", volume_l, units),
      })),
      tail: formatQuantity("pressure", tail_kpa, units),
    })),
    cautions: [
      "Open and close valves slowly. Relieve the pressure before you open a fitting, and stand clear of the line while it fills.",
      "Water from the field is not for drinking; see that the backflow device is in and tested where one is asked for.",
    ],
  };
}

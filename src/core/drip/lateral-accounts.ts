import { type Account, account, commonPractice, geometry, input, remark } from "../account.ts";
import { say } from "../finding.ts";
import { pressureOf_kpa } from "../hydraulics/pressure-head.ts";
import { emittersAtVine } from "./evenness.ts";
import { flushVelocity_mps } from "./flushing.ts";
import { neededState } from "./lateral-needs.ts";
import { blockOfLateral, lateralOf } from "./lateral-of.ts";
import type { CupCheck, Evenness, LateralNeed } from "./watering.ts";
import type { BlockJob, WateringJob } from "./watering-job.ts";

const backStep = "steps from the last emitter to the tee (calculation handbook, section 4.5)";

/** How the pressure that a row needs at its tee came about, kPa over the pipe there (its height where no trench gets: that of the hose's end). */
export function inletAccount(job: WateringJob, index: number): Account {
  const lateral = lateralOf(job, index);
  const { emitter } = blockOfLateral(job, index);
  const tail_m = job.laterals.tailHeight_m[index] ?? 0;
  const state = neededState(lateral, tail_m);
  const last = lateral.at_m.length - 1;
  const end_m = last < 0 ? tail_m : Number(lateral.height_m[last]);
  const head_m = last < 0 ? state.inlet_m : Number(state.head_m[last]);
  const tee_m = job.line?.height_m[job.laterals.point[index] ?? -1] ?? tail_m;
  return account(
    {
      formula: say`The pressure at the last emitter at which ${emitter.from_m === null ? "all emitters of the row give their nominal flow in the mean" : "the lowest emitter of the row has the least of its range"}, what hose, barbs and riser lose on the way there, and what the way rises.`,
      inputs: [
        input("At the last emitter", "pressure", pressureOf_kpa(head_m - end_m)),
        input("Lost on the way", "pressure", pressureOf_kpa(state.inlet_m - head_m)),
        input("Rise from the tee", "length", end_m - tee_m),
      ],
      source: backStep,
    },
    (last_kpa = 0, lost_kpa = 0, rise_m = 0) => last_kpa + lost_kpa + pressureOf_kpa(rise_m),
  );
}

/** How an emission uniformity came about, a share; `block` is the one whose emitters vary most where several are mixed. */
export function emissionAccount({ lowest_lps, mean_lps, dry }: Evenness, { drip, vineSpacing_m }: BlockJob): Account {
  return account(
    {
      formula: say`Flow of the lowest emitter over the mean, less for what emitters vary by as they are made: 1 - 1.27 times the variation over the root of the emitters at a vine.`,
      inputs: [
        input("Lowest", "flow", lowest_lps * 3600),
        input("Mean", "flow", mean_lps * 3600),
        input("Variation of manufacture", "ratio", drip.emitterVariation_ratio),
        input("Emitters at a vine", "count", emittersAtVine(drip, vineSpacing_m)),
        ...(dry > 0 ? [remark("Without water", String(dry))] : []),
      ],
      source: "Keller and Karmeli 1974, from memory",
    },
    (lowest = 0, mean = 0, variation = 0, atVine = 1) =>
      mean > 0 ? (Math.max(0, 1 - (1.27 * variation) / Math.sqrt(atVine)) * lowest) / mean : 0,
  );
}

/** How a statistical uniformity came about, a share. */
export function statisticalAccount({ statistical_ratio }: Evenness, { drip }: BlockJob): Account {
  const made = drip.emitterVariation_ratio;
  const flows = Math.sqrt(Math.max(0, (1 - statistical_ratio) ** 2 - made ** 2));
  return account(
    {
      formula: say`One less the root of two squares: of what flows vary by through pressure, standard deviation over mean, and of what emitters vary by as they are made.`,
      inputs: [input("Flows", "ratio", flows), input("Manufacture", "ratio", made)],
      source: "Bralts, ASAE EP458, from memory",
    },
    (ofFlows = 0, ofMade = 0) => Math.max(0, 1 - Math.hypot(ofFlows, ofMade)),
  );
}

/** How a variation of flow came about, a share of the highest. */
export function variationAccount({ lowest_lps, highest_lps }: Evenness): Account {
  return account(
    {
      formula: say`Highest flow less the lowest, over the highest.`,
      inputs: [input("Highest", "flow", highest_lps * 3600), input("Lowest", "flow", lowest_lps * 3600)],
      source: "Wu and Gitlin, from memory",
    },
    (highest = 0, lowest = 0) => (highest > 0 ? (highest - lowest) / highest : 0),
  );
}

/** How the longest hose that is even enough came about, m; null where any row's is. */
export function longestAccount(
  { longest }: Pick<LateralNeed, "longest">,
  { drip, vineSpacing_m }: BlockJob,
): Account | null {
  if (longest === null) return null;
  const spacing_m = longest.emitters > 0 ? longest.length_m / longest.emitters : vineSpacing_m;
  return account(
    {
      formula: say`Emitters times their spacing: as many as keep the evenness asked for, with the nominal pressure where the hose begins, on a slope as the row's.`,
      inputs: [
        input("Emitters", "count", longest.emitters),
        input("Spacing", "length", spacing_m),
        remark("Evenness asked for", `${Math.round(1000 * drip.evenness_ratio) / 10} %`),
      ],
      source: backStep,
    },
    (emitters = 0, each_m = 0) => emitters * each_m,
  );
}

/** How the flow that flushes a hose came about, L/h. */
export function flushAccount({ flow_lps }: Pick<LateralNeed, "flow_lps">, { drip }: BlockJob): Account {
  return account(
    {
      formula: say`What runs through the open end of the hose at the speed that carries dirt out, and what its emitters give.`,
      inputs: [
        input("Inside diameter", "diameter", drip.hoseInside_mm),
        input("Speed", "speed", flushVelocity_mps),
        input("Emitters", "flow", flow_lps * 3600),
      ],
      source: "ASAE EP405, from memory",
    },
    (inside_mm = 0, speed_mps = 0, emitters_lph = 0) =>
      speed_mps * (Math.PI / 4) * (inside_mm / 1000) ** 2 * 1000 * 3600 + emitters_lph,
  );
}

/** How what runs into a cup came about, L. */
export function cupAccount({ volume_l }: CupCheck["cups"][number]): Account {
  return account(
    {
      formula: say`Flow of the emitter over three minutes, while its set runs with the filter due for cleaning; with a clean one it is a little more.`,
      inputs: [input("Flow", "flow", volume_l * 20), input("Time", "time", 0.05)],
      source: commonPractice,
    },
    (flow_lph = 0, time_h = 0) => flow_lph * time_h,
  );
}

/** How the riser of a row came about, m. */
export function riserAccount(job: WateringJob, index: number, lead_m: number): Account {
  const riser_m = Number(job.laterals.riser_m[index]);
  return account(
    {
      formula: say`From the tee in the ground on to the end post, and up from the middle of the pipe to the drip wire.`,
      inputs: [input("In the ground", "length", lead_m), input("Up", "length", riser_m - lead_m)],
      source: geometry,
    },
    (along_m = 0, up_m = 0) => along_m + up_m,
  );
}

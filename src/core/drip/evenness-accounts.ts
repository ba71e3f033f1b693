import { type Account, account, input, remark } from "../account.ts";
import { say } from "../finding.ts";
import { pressureOf_kpa } from "../hydraulics/pressure-head.ts";
import { emittersAtVine } from "./evenness.ts";
import type { EmitterStates, Evenness } from "./watering.ts";
import type { BlockJob, WateringJob } from "./watering-job.ts";

/** How the emission uniformity of the emitters of one block came about. */
export function emissionAccount({ drip, vineSpacing_m }: BlockJob, evenness: Evenness): Account {
  return account(
    {
      formula: say`The lowest emitter over the mean, by 1 less 1.27 times the variation of manufacture over the root of the emitters at a vine.`,
      inputs: [
        input("Lowest emitter", "flow", evenness.lowest_lps * 3600),
        input("In the mean", "flow", evenness.mean_lps * 3600),
        input("Variation of manufacture", "ratio", drip.emitterVariation_ratio),
        input("Emitters at a vine", "count", emittersAtVine(drip, vineSpacing_m)),
      ],
      source: "Keller and Karmeli 1974, from memory",
    },
    (lowest = 0, mean = 1, variation = 0, atVine = 1) =>
      Math.max(0, 1 - (1.27 * variation) / Math.sqrt(atVine)) * (lowest / mean),
  );
}

/** How the statistical uniformity of the emitters of one block came about. */
export function statisticalAccount({ drip }: BlockJob, { statistical_ratio }: Evenness): Account {
  const own = drip.emitterVariation_ratio;
  const flows = Math.sqrt(Math.max(0, (1 - statistical_ratio) ** 2 - own * own));
  return account(
    {
      formula: say`One, less the root of the squares added up of how flows vary by pressure and by manufacture, each as standard deviation over mean.`,
      inputs: [input("By pressure", "ratio", flows), input("By manufacture", "ratio", own)],
      source: "Bralts, ASAE EP458, from memory",
    },
    (byPressure = 0, byMaking = 0) => 1 - Math.hypot(byPressure, byMaking),
  );
}

/** How the share came about by which the flows of one block lie apart. */
export function variationAccount({ highest_lps, lowest_lps }: Evenness): Account {
  return account(
    {
      formula: say`Highest less lowest, over the highest.`,
      inputs: [
        input("Highest emitter", "flow", highest_lps * 3600),
        input("Lowest emitter", "flow", lowest_lps * 3600),
      ],
      source: "Wu and Gitlin, from memory",
    },
    (highest = 1, lowest = 0) => (highest > 0 ? (highest - lowest) / highest : 0),
  );
}

/** How the mean flow of the emitters of a block came about, L/h. */
export function meanFlowAccount({ emitters, mean_lps }: Evenness): Account {
  return account(
    {
      formula: say`All emitters together, each while its own set runs, over their number.`,
      inputs: [input("Together", "flow", emitters * mean_lps * 3600), input("Emitters", "count", emitters)],
      source: "pipes solved as a tree from the source to every emitter",
    },
    (together_lph = 0, count = 1) => together_lph / count,
  );
}

/**
 * How the flow of the emitter of a block came about that gives least or most, L/h: by its pressure while its set runs. `rowName` says what the row of
 * a lateral is called.
 */
export function emitterAccount(
  job: WateringJob,
  { pressure_m, flow_lps }: EmitterStates,
  block: number,
  which: "lowest" | "highest",
  rowName: (lateral: number) => string,
): Account | null {
  const found = emitterOf(job, flow_lps, block, which);
  const law = job.blocks[block]?.emitter;
  if (found === null || law === undefined) return null;
  const [pressure, nominal] = [pressure_m[found.emitter] ?? 0, law.nominalHead_m];
  const from_m = law.from_m !== null && pressure < law.from_m ? law.from_m : null;
  return account(
    {
      formula:
        from_m === null
          ? say`Its flow by nominal pressure, by the pressure it has over the nominal one, to the power of its exponent; no pressure, no flow.`
          : say`It is below its working range, where the flow falls with the root of the pressure from what it is at the beginning of the range.`,
      inputs: [
        remark("It is in row", rowName(found.lateral)),
        input("Flow at nominal pressure", "flow", law.nominal_lps * 3600),
        input("Its pressure", "pressure", pressureOf_kpa(pressure)),
        input("Nominal pressure", "pressure", pressureOf_kpa(nominal)),
        input("Exponent", "count", law.exponent),
        ...(from_m === null ? [] : [input("Range begins at", "pressure", pressureOf_kpa(from_m))]),
      ],
      source: "q = k h^x, by the maker's numbers",
    },
    (nominal_lph = 0, pressure_kpa = 0, nominal_kpa = 1, exponent = 0, from_kpa) => {
      if (pressure_kpa <= 0) return 0;
      if (from_kpa === undefined) return nominal_lph * (pressure_kpa / nominal_kpa) ** exponent;
      return nominal_lph * (from_kpa / nominal_kpa) ** exponent * Math.sqrt(pressure_kpa / from_kpa);
    },
  );
}

function emitterOf(
  { laterals: { block: blocks, offsets, point } }: WateringJob,
  flow_lps: Float64Array,
  block: number,
  which: "lowest" | "highest",
): { readonly lateral: number; readonly emitter: number } | null {
  let found: { readonly lateral: number; readonly emitter: number } | null = null;
  blocks.forEach((own, lateral) => {
    if (own !== block || (point[lateral] ?? -1) < 0) return;
    for (let i = offsets[lateral] ?? 0; i < (offsets[lateral + 1] ?? 0); i++) {
      const [flow, best] = [flow_lps[i] ?? 0, found === null ? null : (flow_lps[found.emitter] ?? 0)];
      if (best === null || (which === "lowest" ? flow < best : flow > best)) found = { lateral, emitter: i };
    }
  });
  return found;
}

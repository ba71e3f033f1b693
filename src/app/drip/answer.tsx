import { monthNames } from "../../core/drip/season/months.ts";
import type { Evenness, Watering } from "../../core/drip/watering.ts";
import type { BlockJob, WateringJob } from "../../core/drip/watering-job.ts";
import type { Plan } from "../../core/plan.ts";
import type { WaterSettings } from "../../core/project/water-settings.ts";
import { formatQuantity, type UnitSystem } from "../../core/units.ts";
import { useStore } from "../store-context.ts";
import { count } from "../strip/count.ts";
import { capital } from "./capital.ts";
import { rowOf } from "./row-runs.ts";
import { type WholeWatering, wholeWatering } from "./whole-watering.ts";

interface Answer {
  readonly is: "yes" | "no" | "open";
  readonly words: string;
  readonly more: string;
}

const signs: Readonly<Record<Answer["is"], string>> = { yes: "✓", no: "△", open: "?" };

/** Is there enough water? In a plain sentence. */
export function EnoughWater({ plan }: { readonly plan: Plan }) {
  const { units, routeState, isWateringAsked } = useStore();
  const isBeingLaid = routeState.value !== "laid";
  const { is, words, more } = answerOf(plan, isBeingLaid, units.value);
  return (
    <div class={`enough-water enough-${is}`} role="status">
      <span class="enough-sign" aria-hidden="true">
        {signs[is]}
      </span>
      <div>
        <p>
          <strong>{words}</strong>
        </p>
        {more !== "" && <p class="aside">{more}</p>}
        {isWateringAsked.value && is !== "open" && <p class="aside">It is being worked out anew …</p>}
      </div>
    </div>
  );
}

function answerOf(plan: Plan, isBeingLaid: boolean, units: UnitSystem): Answer {
  const { project, drip } = plan;
  const [job, watering] = [plan.watering?.job, plan.watering?.watering ?? null];
  const need = drip === null ? "" : `All emitters at once take ${formatQuantity("flow", drip.flow_lph, units)}.`;
  const open = (words: string, more = need): Answer => ({ is: "open", words, more });
  if (project.water.kind === "unknown") {
    return open(
      "Is there enough water? Say below what water you have.",
      `${need} Several sets, one after another, need less at a time.`,
    );
  }
  if (project.sources.length === 0) return open("Draw the water source, in the Main line step, to find out.");
  if (job === undefined || watering === null || isBeingLaid) {
    return open("Is there enough water? It is being worked out …");
  }
  if (watering.supply === null) return open(missing(project.water));
  const whole = wholeWatering(watering);
  if (whole === null) return open("No way for the main line was found, so no set can be fed.");
  const uneven = job.blocks.find((block, b) => isUneven(block, watering.blocks[b] ?? null));
  const answer = lacking(plan, job, watering, whole, units) ?? enough(project.water, watering, whole, units);
  if (answer.is !== "yes" || uneven === undefined) return answer;
  const share = (ratio: number) => formatQuantity("ratio", ratio, units, 0);
  const got = watering.blocks[job.blocks.indexOf(uneven)]?.emission_ratio ?? 0;
  return {
    is: "no",
    words: `Enough water, but not as evenly as asked for: ${share(got)}, and ${share(uneven.drip.evenness_ratio)} is wanted${job.blocks.length > 1 ? ` in ${uneven.name}` : ""}.`,
    more: `${capital(answer.words.replace(/^Yes: /, ""))} ${answer.more}`,
  };
}

/** The same hair as the advice has. */
function isUneven({ drip }: BlockJob, evenness: Evenness | null): boolean {
  return evenness !== null && evenness.emission_ratio < drip.evenness_ratio - 1e-3;
}

/** What is short, at any hour; null when every row has its pressure. */
function lacking(
  plan: Plan,
  job: WateringJob,
  { sets, isShort }: Watering,
  { spare_kpa, dry }: WholeWatering,
  units: UnitSystem,
): Answer | null {
  if (spare_kpa >= 0 && !isShort && dry === 0) return null;
  const [shortest] = [...sets].sort((one, other) => one.spare_m - other.spare_m);
  const told =
    spare_kpa < 0 && shortest
      ? `Set ${shortest.name} lacks ${formatQuantity("pressure", -spare_kpa, units)} at row ${rowOf(plan, job, shortest.sparest)}.`
      : "A set takes more than the water gives with its reserve.";
  return {
    is: "no",
    words: `No, there is not enough water for ${sets.length === 1 ? "one set" : count(sets.length, "set")} as planned.`,
    more: `${told}${dry > 0 ? ` ${count(dry, "emitter")} would stay dry.` : ""}`,
  };
}

/** Every row has its pressure: how far it reaches, and whether the hours do. */
function enough({ hoursADay_h }: WaterSettings, { sets }: Watering, whole: WholeWatering, units: UnitSystem): Answer {
  const spare = formatQuantity("pressure", whole.spare_kpa, units);
  const flow = formatQuantity("flow", whole.most_lph, units);
  const beyond = whole.spare_kpa < hardly_kpa ? "with next to nothing to spare" : `with ${spare} or more to spare`;
  const reach =
    sets.length === 1
      ? `one set reaches every row ${beyond}; it takes ${flow}.`
      : `${numberWord(sets.length)} sets, one after another, reach every row ${beyond}; the largest takes ${flow}.`;
  const { peak } = whole;
  if (peak === null) {
    return { is: "yes", words: `Yes: ${reach}`, more: "Whether the hours suffice is told once the year is known." };
  }
  const hours = (time_h: number) => formatQuantity("time", Math.round(time_h * 10) / 10, units);
  const month = monthNames[peak.month - 1] ?? "";
  const run = sets.length === 1 ? "the set runs" : "all sets together run";
  const [there, usual, most] = [hoursADay_h, peak.usualAll_h, peak.all_h].map(hours);
  if (peak.all_h <= hoursADay_h + hair_h) {
    return {
      is: "yes",
      words: `Yes: ${reach}`,
      more: `In ${month} ${run} ${most} of the ${there} a day at the peak, ${usual} as it is usually given.`,
    };
  }
  return {
    is: "no",
    words:
      peak.usualAll_h <= hoursADay_h + hair_h
        ? `Enough as it is usually given, not at the peak: in ${month} ${run} ${usual} a day as usual, ${most} at the peak, and there is water for ${there}.`
        : `Not in the hours there are: in ${month} ${run} ${usual} a day as it is usually given, ${most} at the peak, and there is water for ${there}.`,
    more: capital(reach),
  };
}

/** Small numbers as words, for sentences that begin with them. */
function numberWord(number: number): string {
  return ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine"][number] ?? String(number);
}

const hair_h = 1e-3;
const hardly_kpa = 0.5;

/** What is still to be stated before anything can be said. */
function missing({ kind }: WaterSettings): string {
  switch (kind) {
    case "measured":
      return "Not enough is known of the water yet: read the pressure and fill a bucket.";
    case "pump":
      return "Not enough is known of the water yet: a pump needs points of its curve.";
    case "tank":
      return "Not enough is known of the water yet: how high does the tank’s water stand?";
    case "town":
      return "Not enough is known of the water yet: what pressure, and how much may be taken?";
    case "unknown":
      return "Say what water you have.";
  }
}

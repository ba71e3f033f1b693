import type { Plan } from "../../core/plan.ts";
import type { WaterSettings } from "../../core/project/water-settings.ts";
import { formatQuantity } from "../../core/units.ts";
import { useStore } from "../store-context.ts";
import { count } from "../strip/count.ts";
import { monthNames } from "./months.ts";
import { rowOf } from "./row-runs.ts";
import { wholeWatering } from "./whole-watering.ts";

type Answer = { readonly is: "yes" | "no" | "open"; readonly words: string; readonly more?: string };

const signs: Readonly<Record<Answer["is"], string>> = { yes: "✓", no: "△", open: "?" };

/** Is there enough water? In a plain sentence. */
export function EnoughWater({ plan }: { readonly plan: Plan }) {
  const { units: unitsSignal, routeState } = useStore();
  const units = unitsSignal.value;
  const { is, words, more } = answer();
  return (
    <div class={`enough-water enough-${is}`} role="status">
      <span class="enough-sign" aria-hidden="true">
        {signs[is]}
      </span>
      <div>
        <p>
          <strong>{words}</strong>
        </p>
        {more && <p class="aside">{more}</p>}
      </div>
    </div>
  );

  function answer(): Answer {
    const { project, watering: watered } = plan;
    const all = plan.drip === null ? null : formatQuantity("flow", plan.drip.flow_lph, units);
    const need = all === null ? "" : `All emitters at once take ${all}.`;
    if (project.water.kind === "unknown") {
      return {
        is: "open",
        words: "Is there enough water? Say below what water you have.",
        more: `${need} Several sets, one after another, need less at a time.`,
      };
    }
    if (project.sources.length === 0) {
      return { is: "open", words: "Draw the water source, in the Main line step, to find out.", more: need };
    }
    const watering = watered?.watering ?? null;
    if (watered === null || watering === null || routeState.value !== "laid") {
      return { is: "open", words: "Is there enough water? It is being worked out …", more: need };
    }
    if (watering.supply === null) return { is: "open", words: missing(project.water), more: need };
    const whole = wholeWatering(watering);
    if (whole === null) {
      return { is: "open", words: "No way for the main line was found, so no set can be fed.", more: need };
    }
    const { sets } = watering;
    const told = `${count(sets.length, "set")}${sets.length > 1 ? ", one after another," : ""}`;
    const pressure = (kpa: number) => formatQuantity("pressure", kpa, units);
    const shortest = sets.reduce((least, set) => (set.spare_m < least.spare_m ? set : least));
    if (whole.spare_kpa < 0 || watering.isShort || whole.dry > 0) {
      const lacking =
        whole.spare_kpa < 0
          ? `Set ${shortest.name} lacks ${pressure(-whole.spare_kpa)} at row ${rowOf(plan, watered.job, shortest.sparest)}.`
          : "A set takes more than the water gives with its reserve.";
      const dry = whole.dry > 0 ? ` ${count(whole.dry, "emitter")} would stay dry.` : "";
      return {
        is: "no",
        words: `No, there is not enough water for ${told.replace(/,$/, "")} as planned.`,
        more: lacking + dry,
      };
    }
    const reach = `${told} reach every vine with ${pressure(whole.spare_kpa)} or more to spare; the largest takes ${formatQuantity("flow", whole.most_lph, units)}.`;
    if (whole.peak_h === null || whole.peakMonth === null) {
      return { is: "yes", words: `Yes: ${reach}`, more: "Whether the hours suffice is told once the year is known." };
    }
    const hours = formatQuantity("time", whole.peak_h, units, 1);
    const day = formatQuantity("time", project.water.hoursADay_h, units);
    const month = monthNames[whole.peakMonth - 1] ?? "";
    return whole.peak_h > project.water.hoursADay_h + 1e-9
      ? {
          is: "no",
          words: `Not in the hours there are: in ${month} all sets run ${hours} a day, and there is water for ${day}.`,
          more: capital(reach),
        }
      : { is: "yes", words: `Yes: ${reach}`, more: `In ${month} all sets run ${hours} of the ${day} a day.` };
  }
}

function capital(sentence: string): string {
  return `${sentence.charAt(0).toUpperCase()}${sentence.slice(1)}`;
}

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

import { useState } from "preact/hooks";
import type { Advice } from "../../core/drip/advice.ts";
import type { AdviceNumbers } from "../../core/drip/advice-numbers.ts";
import type { Watering } from "../../core/drip/watering.ts";
import type { WateringJob } from "../../core/drip/watering-job.ts";
import { pressureOf_kpa } from "../../core/hydraulics/pressure-head.ts";
import { withSettings } from "../../core/project/edits.ts";
import { formatQuantity, text, type UnitSystem } from "../../core/units.ts";
import { edit } from "../commands/edit.ts";
import { useStore } from "../store-context.ts";
import { count } from "../strip/count.ts";
import { useAdvice } from "./use-advice.ts";
import { lphOf } from "./whole-watering.ts";

/** What would help where the water falls short, the least trouble first, each with what comes of it; taken as one step or left. */
export function AdviceList({ job, watering }: { readonly job: WateringJob; readonly watering: Watering }) {
  const store = useStore();
  const units = store.units.value;
  const [refusal, setRefusal] = useState<string | null>(null);
  const helps = useAdvice(job, watering);
  if (helps === "not needed") return null;
  const take = ({ name, edits }: Advice): void => {
    const first = edit(store, { name: text(name, units) }, (project) => withSettings(project, edits))[0];
    setRefusal(first ? `${text(first.message, units)} ${text(first.remedy, units)}` : null);
  };
  return (
    <section class="advice" aria-label="What would help" aria-busy={helps === "asked"}>
      <h3>What would help</h3>
      {helps === "asked" && <p class="aside">It is being tried out …</p>}
      {helps !== "asked" && helps.length === 0 && (
        <p class="aside">
          Nothing that was tried makes it better: longer hours, sets, emitters, pipe, a tank or a pump.
        </p>
      )}
      {helps !== "asked" && helps.length > 0 && (
        <>
          <p class="aside">
            Now: {helps[0] && told(helps[0].before, units)}. The least trouble first, each by itself; taken, it is one
            step, and undo brings back what was.
          </p>
          <ul>
            {helps.map((advice) => (
              <li key={advice.id}>
                <p>
                  <strong>{text(advice.name, units)}</strong>
                </p>
                <p>
                  {advice.isEnough ? "Then there is enough: " : "Better, but not enough: "}
                  {told(advice.after, units)}.
                </p>
                {advice.note && <p class="aside">{text(advice.note, units)}</p>}
                {advice.edits.length > 0 && (
                  <button
                    type="button"
                    class="quiet-button"
                    aria-label={`Take this: ${text(advice.name, units)}`}
                    onClick={() => take(advice)}
                  >
                    Take this
                  </button>
                )}
              </li>
            ))}
          </ul>
        </>
      )}
      {refusal && (
        <p class="field-refusal" role="alert">
          {refusal}
        </p>
      )}
    </section>
  );
}

function told({ sets, flow_lps, spare_m, evenness_ratio, peak_h }: AdviceNumbers, units: UnitSystem): string {
  if (flow_lps === 0) return `${count(sets, "set")}, and no water reaches the rows`;
  const pressure = formatQuantity("pressure", pressureOf_kpa(Math.abs(spare_m)), units);
  return [
    count(sets, "set"),
    formatQuantity("flow", lphOf(flow_lps), units),
    spare_m < 0 ? `${pressure} missing` : `${pressure} to spare`,
    `${Math.round(100 * evenness_ratio)} % even`,
    ...(peak_h === null ? [] : [`${formatQuantity("time", peak_h, units, peak_h < 1 ? 0 : 1)} a day at the peak`]),
  ].join(", ");
}

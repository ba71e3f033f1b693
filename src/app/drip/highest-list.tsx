import { highestAccount } from "../../core/drip/pressure-accounts.ts";
import type { HighestPressure, Watering } from "../../core/drip/watering.ts";
import type { WateringJob } from "../../core/drip/watering-job.ts";
import type { Plan } from "../../core/plan.ts";
import { formatQuantity } from "../../core/units.ts";
import { Figure } from "../figure/figure.tsx";
import { useStore } from "../store-context.ts";
import { usePipeName } from "./pipe-list.tsx";
import { rowOf } from "./row-runs.ts";

const whenWords: Readonly<Record<HighestPressure["when"], string>> = {
  closed: "all valves shut",
  running: "while it runs",
  surge: "a valve closes",
};

interface HighestListProps {
  readonly plan: Plan;
  readonly job: WateringJob;
  readonly watering: Watering;
}

/** The most that pipe, hose and emitters are to stand, against what they stand. */
export function HighestList({ plan, job, watering }: HighestListProps) {
  const units = useStore().units.value;
  const nameOf = usePipeName();
  if (watering.highest.length === 0) return null;
  const pressure = (kpa: number) => formatQuantity("pressure", kpa, units);
  const what = ({ what: thing, pipe, lateral }: HighestPressure): string => {
    const own = watering.pipes[pipe];
    if (thing === "pipe") return own ? nameOf(own.pipe) : "Pipe";
    const row = lateral < 0 ? "" : `, row ${rowOf(plan, job, lateral)}`;
    return `${thing === "hose" ? "Hose" : "Emitter"}${row}`;
  };
  return (
    <section aria-label="Highest pressures">
      <h3>Highest pressures</h3>
      <table class="drip-table">
        <caption class="unseen">Highest pressures</caption>
        <thead>
          <tr>
            <th scope="col">In</th>
            <th scope="col">Highest</th>
            <th scope="col">Stands</th>
          </tr>
        </thead>
        <tbody>
          {watering.highest.map((each) => (
            <tr
              key={`${each.what} ${each.when} ${each.pipe}`}
              class={each.pressure_kpa > each.most_kpa ? "over" : undefined}
            >
              <th scope="row">
                {what(each)} <small>{whenWords[each.when]}</small>
              </th>
              <td>
                <Figure
                  value={pressure(each.pressure_kpa)}
                  label={`${what(each)}, ${whenWords[each.when]}`}
                  account={() => highestAccount(each)}
                />
                {each.pressure_kpa > each.most_kpa && (
                  <small>
                    <span aria-hidden="true">△ </span>too high
                  </small>
                )}
              </td>
              <td>{pressure(each.most_kpa)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

import { highestAccount } from "../../core/drip/pressure-accounts.ts";
import type { HighestPressure, Watering } from "../../core/drip/watering.ts";
import type { WateringJob } from "../../core/drip/watering-job.ts";
import type { Plan } from "../../core/plan.ts";
import { formatQuantity } from "../../core/units.ts";
import { Figure } from "../figure/figure.tsx";
import { useStore } from "../store-context.ts";
import { StagePart } from "../strip/stage-part.tsx";
import { capital } from "./capital.ts";
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

/** The most that each pipe size, hose and emitters are to stand, against what they stand. */
export function HighestList({ plan, job, watering }: HighestListProps) {
  const units = useStore().units.value;
  const nameOf = usePipeName();
  const pressure = (kpa: number) => formatQuantity("pressure", kpa, units);
  const thing = ({ what, pipe }: HighestPressure): string => {
    const own = watering.pipes[pipe];
    return what === "pipe" && own ? nameOf(own.pipe) : what;
  };
  const worst = worstOf(watering.highest, thing);
  const [nearest] = [...worst].sort((one, other) => loadOf(other) - loadOf(one));
  if (!nearest) return null;
  const where = ({ when, lateral }: HighestPressure): string =>
    lateral < 0 ? whenWords[when] : `${whenWords[when]}, row ${rowOf(plan, job, lateral)}`;
  const mark = loadOf(nearest) > 1 ? "△ too high: " : "";
  return (
    <StagePart
      name="Highest pressures"
      told={`${mark}${thing(nearest)} ${pressure(nearest.pressure_kpa)}, stands ${pressure(nearest.most_kpa)}`}
    >
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
          {worst.map((each) => (
            <tr key={thing(each)} class={loadOf(each) > 1 ? "over" : undefined}>
              <th scope="row">
                {capital(thing(each))} <small>{where(each)}</small>
              </th>
              <td>
                <Figure
                  value={pressure(each.pressure_kpa)}
                  label={`${thing(each)}, ${where(each)}`}
                  account={() => highestAccount(each)}
                />
                {loadOf(each) > 1 && (
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
      <p class="aside">
        Pipe is taken at the temperature of the water. A regulator at each set holds hose and emitters down.
      </p>
    </StagePart>
  );
}

function loadOf({ pressure_kpa, most_kpa }: HighestPressure): number {
  return pressure_kpa / most_kpa;
}

/** Of each thing the place and moment that come nearest to what it stands. */
function worstOf(
  highest: readonly HighestPressure[],
  thing: (each: HighestPressure) => string,
): readonly HighestPressure[] {
  const worst = new Map<string, HighestPressure>();
  for (const each of highest) {
    const before = worst.get(thing(each));
    if (before === undefined || loadOf(each) > loadOf(before)) worst.set(thing(each), each);
  }
  return [...worst.values()];
}

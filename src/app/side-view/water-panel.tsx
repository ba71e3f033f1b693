import "./side-view.css";
import { useState } from "preact/hooks";
import { lateralChartSheet, lateralChartSvg } from "../../core/sheets/lateral-chart-svg.ts";
import { lineChartSheet, lineChartSvg } from "../../core/sheets/line-chart-svg.ts";
import { ChartPart } from "../drip/chart-part.tsx";
import { useStore } from "../store-context.ts";

/** Pressure and flow along the hose of the chosen row, and along the pipes of a set: the one it runs in, else any. */
export function WaterPanel() {
  const store = useStore();
  const [chosen, setChosen] = useState<number | null>(null);
  const [plan, units] = [store.shownPlan.value, store.units.value];
  const watered = plan?.watering;
  const rows = plan?.rows?.rows ?? [];
  if (!plan || !watered?.watering) return <p class="side-empty">What the water does is not worked out yet.</p>;
  const { job, watering } = watered;
  const name = (row: number): string => `Row ${rows[row]?.id ?? ""}`;
  const row = rows.findIndex(({ id }) => id === store.row.value);
  const own = watering.sets.findIndex(({ laterals }) => laterals.some((lateral) => job.laterals.row[lateral] === row));
  const set = own >= 0 ? own : Math.min(chosen ?? 0, watering.sets.length - 1);
  return (
    <div class="side-content water-panel">
      {row < 0 && (
        <p class="side-empty">Choose a row, on the map or in the row list, to see pressure and flow along its hose.</p>
      )}
      {row >= 0 && (
        <ChartPart
          key={`row ${row}`}
          title={`${name(row)}, along the hose`}
          file={`${plan.project.name} row ${rows[row]?.id} water`}
          draw={(width_px) => lateralChartSheet(watered, row, name(row), { units, width_px })}
          whole={() => lateralChartSvg(watered, row, name(row), { units })}
        />
      )}
      {watering.sets.length > 0 && (
        <>
          {own < 0 && watering.sets.length > 1 && (
            <label class="trench-branch">
              Set{" "}
              <select value={set} onChange={(event) => setChosen(Number(event.currentTarget.value))}>
                {watering.sets.map((each, s) => (
                  <option key={each.name} value={s}>
                    {each.name}
                  </option>
                ))}
              </select>
            </label>
          )}
          <ChartPart
            key={`set ${set}`}
            title={`Set ${watering.sets[set]?.name}, along the main line`}
            file={`${plan.project.name} set ${watering.sets[set]?.name} pipes`}
            draw={(width_px) => lineChartSheet(watered, set, name, { units, width_px })}
            whole={() => lineChartSvg(watered, set, name, { units })}
          />
        </>
      )}
    </div>
  );
}

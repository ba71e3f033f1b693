import { emissionAccount } from "../../core/drip/evenness-accounts.ts";
import { monthNames } from "../../core/drip/season/months.ts";
import { setFlowAccount, spareAccount } from "../../core/drip/set-accounts.ts";
import { startPressureAccount } from "../../core/drip/supply-accounts.ts";
import type { Watering, WaterSet } from "../../core/drip/watering.ts";
import type { WateringJob } from "../../core/drip/watering-job.ts";
import { pressureOf_kpa } from "../../core/hydraulics/pressure-head.ts";
import type { Plan } from "../../core/plan.ts";
import { formatQuantity } from "../../core/units.ts";
import { Figure } from "../figure/figure.tsx";
import { useStore } from "../store-context.ts";
import { count } from "../strip/count.ts";
import { rowOf, rowRuns } from "./row-runs.ts";
import { lphOf } from "./whole-watering.ts";

interface SetListProps {
  readonly plan: Plan;
  readonly job: WateringJob;
  readonly watering: Watering;
}

/** The sets one after another: their rows, what they take, what pressure they have and how evenly they give it. */
export function SetList({ plan, job, watering }: SetListProps) {
  if (watering.sets.length === 0) return null;
  return (
    <section aria-label="Sets">
      <h3>{watering.sets.length === 1 ? "One set" : "Sets, one after another"}</h3>
      <table class="sets">
        <caption class="unseen">Sets</caption>
        <thead>
          <tr>
            <th scope="col">Flow</th>
            <th scope="col">Begins with</th>
            <th scope="col">To spare</th>
            <th scope="col">Even</th>
          </tr>
        </thead>
        {watering.sets.map((set) => (
          <SetRows key={set.name} plan={plan} job={job} watering={watering} set={set} />
        ))}
      </table>
    </section>
  );
}

function SetRows({ plan, job, watering, set }: SetListProps & { readonly set: WaterSet }) {
  const units = useStore().units.value;
  const pressure = (head_m: number) => formatQuantity("pressure", pressureOf_kpa(head_m), units);
  const fast_mps = set.nodes.velocity_mps.reduce((most, each) => Math.max(most, each), 0);
  const isShort = set.spare_m < 0;
  const even = `${Math.round(100 * set.evenness.emission_ratio)} %`;
  const inBlocks = [...new Set(set.laterals.map((lateral) => job.laterals.block[lateral] ?? -1))];
  const hours = runHours(watering);
  // Of several blocks each has emitters of its own: their evenness is told block by block.
  const block = inBlocks.length === 1 ? job.blocks[inBlocks[0] ?? -1] : undefined;
  const [lowest, highest] = [set.evenness.lowest_lps, set.evenness.highest_lps].map((flow_lps) =>
    formatQuantity("flow", lphOf(flow_lps), units),
  );
  return (
    <tbody class={isShort ? "set-short" : undefined}>
      <tr>
        <th scope="rowgroup" colSpan={4}>
          Set {set.name}: rows {rowRuns(plan, job, set.laterals)}{" "}
          <small>{count(set.evenness.emitters, "emitter")}</small>
        </th>
      </tr>
      <tr>
        <td>
          <Figure
            value={formatQuantity("flow", lphOf(set.flow_lps), units)}
            label={`set ${set.name}`}
            account={() => setFlowAccount(set)}
          />
        </td>
        <td>
          <Figure
            value={pressure(set.source_m - job.source.height_m)}
            label={`where the main line begins, set ${set.name}`}
            account={() =>
              startPressureAccount(job, pressureOf_kpa(set.gauge_m - job.source.height_m), set.flow_lps, true)
            }
          />
        </td>
        <td>
          {isShort && (
            <small class="short-by">
              <span aria-hidden="true">△ </span>short by
            </small>
          )}
          <Figure
            value={pressure(Math.abs(set.spare_m))}
            label={`${isShort ? "missing" : "to spare"}, set ${set.name}`}
            account={() => spareAccount(job, watering, set, rowOf(plan, job, set.sparest))}
          />
        </td>
        <td>
          {block ? (
            <Figure
              value={even}
              label={`emission uniformity, set ${set.name}`}
              account={() => emissionAccount(block, set.evenness)}
            />
          ) : (
            even
          )}
        </td>
      </tr>
      <tr class="set-more">
        <td colSpan={4}>
          {hours && `Runs ${hours}. `}
          Least to spare at row {rowOf(plan, job, set.sparest)}; emitters give {lowest}
          {highest !== lowest && ` to ${highest}`}
          {set.evenness.dry > 0 && `, ${count(set.evenness.dry, "emitter")} dry`}; water runs at up to{" "}
          {formatQuantity("speed", fast_mps, units)}; full after {formatQuantity("time", set.fill_h, units, 0)};{" "}
          {set.flushable > 0
            ? `${count(set.flushable, "row")} can be flushed at once.`
            : "no row can be flushed at full speed."}
          {!set.isSettled && " The numbers did not settle: take them as rough."}
        </td>
      </tr>
    </tbody>
  );

  /** At the peak, of the block that asks for most in it. */
  function runHours({ season }: Watering): string | null {
    if (season === null) return null;
    const peak = inBlocks
      .flatMap((block) => season[block]?.peak ?? [])
      .reduce<Peak | null>((most, each) => (most === null || each.peak_h > most.peak_h ? each : most), null);
    if (peak === null) return null;
    return `${formatQuantity("time", peak.peak_h, units, 1)} a day in ${monthNames[peak.month - 1] ?? ""}`;
  }
}

interface Peak {
  readonly month: number;
  readonly peak_h: number;
}

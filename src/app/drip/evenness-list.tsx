import {
  emissionAccount,
  emitterAccount,
  meanFlowAccount,
  statisticalAccount,
  variationAccount,
} from "../../core/drip/evenness-accounts.ts";
import type { Evenness, Watering } from "../../core/drip/watering.ts";
import type { BlockJob, WateringJob } from "../../core/drip/watering-job.ts";
import type { Plan } from "../../core/plan.ts";
import { formatQuantity } from "../../core/units.ts";
import { useStore } from "../store-context.ts";
import { grouped } from "../strip/count.ts";
import { type FigureLine, FigureList } from "../strip/figure-list.tsx";
import { rowOf } from "./row-runs.ts";
import { lphOf } from "./whole-watering.ts";

interface EvennessListProps {
  readonly plan: Plan;
  readonly job: WateringJob;
  readonly watering: Watering;
}

/** How evenly each block gets its water, against what is asked for. */
export function EvennessList({ plan, job, watering }: EvennessListProps) {
  const units = useStore().units.value;
  const watered = job.blocks.flatMap((block, b) => {
    const evenness = watering.blocks[b] ?? null;
    return evenness === null ? [] : [{ b, block, evenness }];
  });
  if (watered.length === 0) return null;
  return (
    <section aria-label="Evenness">
      <h3>Evenness</h3>
      {watered.map(({ b, block, evenness }) => (
        <div key={block.id}>
          {job.blocks.length > 1 && <h4>{block.name}</h4>}
          <FigureList lines={lines(b, block, evenness)} />
        </div>
      ))}
    </section>
  );

  function lines(b: number, block: BlockJob, evenness: Evenness): readonly FigureLine[] {
    const flow = (value_lps: number) => formatQuantity("flow", lphOf(value_lps), units);
    const share = (ratio: number) => formatQuantity("ratio", ratio, units, 1);
    const line = (name: string, value: string, account: FigureLine["account"], how?: string): FigureLine => ({
      name,
      value,
      account,
      ...(how !== undefined && { how }),
    });
    const one = (which: "lowest" | "highest") => () =>
      watering.emitters && emitterAccount(job, watering.emitters, b, which, (lateral) => rowOf(plan, job, lateral));
    const asked = share(block.drip.evenness_ratio);
    const isUnder = evenness.emission_ratio < block.drip.evenness_ratio - 5e-4;
    return [
      line(
        "Emission uniformity",
        share(evenness.emission_ratio),
        () => emissionAccount(block, evenness),
        isUnder ? `△ less than the ${asked} asked for` : `${asked} is asked for`,
      ),
      line("Statistical uniformity", share(evenness.statistical_ratio), () => statisticalAccount(block, evenness)),
      line(
        "Lowest to highest flow",
        share(evenness.variation_ratio),
        () => variationAccount(evenness),
        "apart, of the highest; 10 to 20 % is usual",
      ),
      line("Emitter that gives least", flow(evenness.lowest_lps), one("lowest")),
      line("Emitters in the mean", flow(evenness.mean_lps), () => meanFlowAccount(evenness)),
      line("Emitter that gives most", flow(evenness.highest_lps), one("highest")),
      ...(evenness.dry > 0 ? [line("Emitters that stay dry", grouped(evenness.dry), null)] : []),
    ];
  }
}

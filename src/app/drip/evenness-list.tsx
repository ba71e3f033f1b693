import type { Evenness, Watering } from "../../core/drip/watering.ts";
import type { WateringJob } from "../../core/drip/watering-job.ts";
import { formatQuantity } from "../../core/units.ts";
import { useStore } from "../store-context.ts";
import { grouped } from "../strip/count.ts";
import { type FigureLine, FigureList } from "../strip/figure-list.tsx";
import { lphOf } from "./whole-watering.ts";

/** How evenly each block gets its water, against what is asked for. */
export function EvennessList({ job, watering }: { readonly job: WateringJob; readonly watering: Watering }) {
  const units = useStore().units.value;
  const watered = job.blocks.flatMap((block, b) => {
    const evenness = watering.blocks[b] ?? null;
    return evenness === null ? [] : [{ block, evenness }];
  });
  if (watered.length === 0) return null;
  return (
    <section aria-label="Evenness">
      <h3>Evenness</h3>
      {watered.map(({ block, evenness }) => (
        <div key={block.id}>
          {job.blocks.length > 1 && <h4>{block.name}</h4>}
          <FigureList lines={lines(evenness, block.drip.evenness_ratio)} />
        </div>
      ))}
    </section>
  );

  function lines(evenness: Evenness, asked_ratio: number): readonly FigureLine[] {
    const flow = (value_lps: number) => formatQuantity("flow", lphOf(value_lps), units);
    const share = (ratio: number) => formatQuantity("ratio", ratio, units, 1);
    const line = (name: string, value: string, how?: string): FigureLine => ({
      name,
      value,
      account: null,
      ...(how !== undefined && { how }),
    });
    const isUnder = evenness.emission_ratio < asked_ratio - 5e-4;
    return [
      line(
        "Emission uniformity",
        share(evenness.emission_ratio),
        isUnder ? `△ less than the ${share(asked_ratio)} asked for` : `${share(asked_ratio)} is asked for`,
      ),
      line("Statistical uniformity", share(evenness.statistical_ratio)),
      line("Lowest to highest flow", share(evenness.variation_ratio), "apart, of the highest; 10 to 20 % is usual"),
      line("Emitter that gives least", flow(evenness.lowest_lps)),
      line("Emitters in the mean", flow(evenness.mean_lps)),
      line("Emitter that gives most", flow(evenness.highest_lps)),
      ...(evenness.dry > 0 ? [line("Emitters that stay dry", grouped(evenness.dry))] : []),
    ];
  }
}

import { valvePatterns } from "../project/water-settings.ts";
import { type Delivery, type DeliveryJob, deliver } from "./deliver.ts";
import { setParts, valveCount } from "./set-parts.ts";
import type { PatternCost } from "./watering.ts";

/** Patterns that are only compared are sized without weighing every head: at most some percent dearer. */
const rough: readonly number[] = [];

/** What the chosen pattern of valves comes to, and the others with the same sets. */
export function patternCosts(of: DeliveryJob, chosen: Delivery): readonly PatternCost[] {
  return valvePatterns.map((pattern) => {
    const delivery = pattern === chosen.pattern ? chosen : deliver(of, chosen.sets, pattern, rough);
    return {
      pattern,
      valves: valveCount(delivery),
      pipe_m: delivery.segments.length_m.reduce((sum_m, length_m) => sum_m + length_m, 0),
      price: priceOf(of, delivery),
      pipeCost: delivery.cost,
      isShort: delivery.isShort,
    };
  });
}

/** Pipe by the metre, valves and what goes with them; caps of hoses are the same for all. null: something of it is not priced. */
function priceOf({ job, line }: DeliveryJob, delivery: Delivery): number | null {
  const parts = setParts(job, line, delivery).filter(({ kind }) => kind !== "flush-cap");
  const prices = [
    ...parts.map(({ article, quantity }) => times(job.prices[article], quantity)),
    ...delivery.pipes.map(({ size, stick_m }, i) => {
      return times(job.prices[`main-pipe-${size}`], Number(delivery.segments.length_m[i]) / stick_m);
    }),
  ];
  return prices.reduce<number | null>((sum, each) => (sum === null || each === null ? null : sum + each), 0);
}

function times(price: number | undefined, quantity: number): number | null {
  return price === undefined ? null : price * quantity;
}

import { emittersAccount, flowAccount } from "../../core/drip/accounts.ts";
import { emissionAccount } from "../../core/drip/evenness-accounts.ts";
import { setFlowAccount, setsAccount } from "../../core/drip/set-accounts.ts";
import { formatQuantity } from "../../core/units.ts";
import { useStore } from "../store-context.ts";
import { count } from "../strip/count.ts";
import { ResultLine, type ResultPart } from "../strip/result-line.tsx";
import { leastEven, wholeWatering } from "./whole-watering.ts";

/** "2 sets, 4.1 gal/min, 92 % even"; what all emitters take while the water is not known. */
export function DripLine() {
  const { shownPlan, units: unitsSignal } = useStore();
  const [plan, units] = [shownPlan.value, unitsSignal.value];
  if (!plan?.rows || !plan.drip) return <>none yet</>;
  const { rows, drip, project } = plan;
  const [job, watering] = [plan.watering?.job, plan.watering?.watering ?? null];
  const whole = watering && wholeWatering(watering);
  if (job && watering && whole) {
    const [largest] = [...watering.sets].sort((one, other) => other.flow_lps - one.flow_lps);
    const least = leastEven(watering);
    const [block, evenness] = [job.blocks[least], watering.blocks[least]];
    const running: readonly ResultPart[] = [
      {
        value: formatQuantity("flow", whole.most_lph, units),
        label: "in the largest set",
        account: () => (largest ? setFlowAccount(largest) : null),
      },
      {
        value: `${Math.round(100 * whole.evenness_ratio)} % even`,
        label: "emission uniformity",
        account: () => (block && evenness ? emissionAccount(block, evenness) : null),
      },
    ];
    return (
      <>
        <ResultLine
          parts={[
            {
              value: count(watering.sets.length, "set"),
              label: "one after another",
              account: () => setsAccount(job, watering),
            },
            ...(whole.most_lph === 0 ? [] : running),
          ]}
        />
        {(whole.spare_kpa < 0 || watering.isShort) && ", short of water"}
      </>
    );
  }
  return (
    <ResultLine
      parts={[
        {
          value: count(drip.emitters, "emitter"),
          label: "in all rows",
          account: () => emittersAccount(rows, drip, project.blocks),
        },
        {
          value: formatQuantity("flow", drip.flow_lph, units),
          label: "for all at once",
          account: () => flowAccount(rows, drip, project.blocks),
        },
      ]}
    />
  );
}

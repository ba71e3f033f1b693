import { emittersAccount, flowAccount } from "../../core/drip/accounts.ts";
import { formatQuantity } from "../../core/units.ts";
import { useStore } from "../store-context.ts";
import { count } from "../strip/count.ts";
import { ResultLine } from "../strip/result-line.tsx";
import { wholeWatering } from "./whole-watering.ts";

/** "2 sets, 4.1 gal/min, 92 % even"; what all emitters take while the water is not known. */
export function DripLine() {
  const { shownPlan, units: unitsSignal } = useStore();
  const [plan, units] = [shownPlan.value, unitsSignal.value];
  if (!plan?.rows || !plan.drip) return <>none yet</>;
  const { rows, drip, project } = plan;
  const watering = plan.watering?.watering ?? null;
  const whole = watering && wholeWatering(watering);
  if (watering && whole) {
    return (
      <>
        {count(watering.sets.length, "set")}, {formatQuantity("flow", whole.most_lph, units)},{" "}
        {whole.spare_kpa < 0 || watering.isShort
          ? "short of water"
          : `${Math.round(100 * whole.evenness_ratio)} % even`}
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

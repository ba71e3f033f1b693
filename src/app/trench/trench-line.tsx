import { cutAccount } from "../../core/trench/earth-accounts.ts";
import { dugAccount } from "../../core/trench/line-accounts.ts";
import { formatQuantity } from "../../core/units.ts";
import { useStore } from "../store-context.ts";
import { ResultLine } from "../strip/result-line.tsx";

/** "245.3 m, 12.4 m³ to dig"; what it waits for while there is none. */
export function TrenchLine() {
  const { shownPlan, routeState, units: unitsSignal } = useStore();
  const [plan, units] = [shownPlan.value, unitsSignal.value];
  if (!plan?.trench) return <>{routeState.value === "waiting" ? "follows when you let go" : "after the main line"}</>;
  const { trench, project } = plan;
  const { earth } = trench;
  return (
    <ResultLine
      parts={[
        {
          value: formatQuantity("length", earth.dug_m, units),
          label: "of trench",
          account: () => dugAccount(trench),
        },
        {
          value: `${formatQuantity("earth", earth.cut_m3, units, 1)} to dig`,
          label: "as it lies",
          account: () => cutAccount(trench, project.trench),
        },
      ]}
    />
  );
}

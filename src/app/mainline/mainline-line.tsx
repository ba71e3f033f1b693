import { routeLengthAccount, teesAccount } from "../../core/mainline/route-accounts.ts";
import { formatQuantity } from "../../core/units.ts";
import { useStore } from "../store-context.ts";
import { count } from "../strip/count.ts";
import { ResultLine } from "../strip/result-line.tsx";

/** "245.3 m, 21 row tees"; what the route waits for while there is none. */
export function MainlineLine() {
  const { shownPlan, routeState, units } = useStore();
  const plan = shownPlan.value;
  const route = plan?.mainline?.route ?? null;
  if (plan === null || plan.project.sources.length === 0) return <>no water source yet</>;
  if (routeState.value === "waiting") return <>follows when you let go</>;
  if (route === null) return <>{routeState.value === "asked" ? "being laid" : "no route found"}</>;
  return (
    <ResultLine
      parts={[
        {
          value: formatQuantity("length", route.length_m, units.value),
          label: "main line on the level",
          account: () => routeLengthAccount(route),
        },
        {
          value: count(route.waterEnd.length - route.unreached.length, "row tee"),
          label: "on the main line",
          account: () => teesAccount(route),
        },
      ]}
    />
  );
}

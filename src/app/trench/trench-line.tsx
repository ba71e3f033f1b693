import { useStore } from "../store-context.ts";

export function TrenchLine() {
  const plan = useStore().shownPlan.value;
  return <>{plan?.trench ? "" : "after the main line"}</>;
}

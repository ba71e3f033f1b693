import "./trench.css";
import { useStore } from "../store-context.ts";
import { MoreTrenchFields } from "./more-trench-fields.tsx";
import { TrenchCaution } from "./trench-caution.tsx";
import { TrenchFields } from "./trench-fields.tsx";
import { TrenchResults } from "./trench-results.tsx";

/** All of the trench: what it is dug by, what comes of it, and what everybody in it must know. */
export function TrenchDesk() {
  const plan = useStore().shownPlan.value;
  if (!plan) return null;
  const { trench: settings } = plan.project;
  return (
    <>
      <TrenchFields settings={settings} />
      <MoreTrenchFields settings={settings} />
      <TrenchResults plan={plan} />
      <TrenchCaution />
    </>
  );
}

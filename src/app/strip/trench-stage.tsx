import { isBlank } from "../../core/drawing/blank.ts";
import { lazily } from "../lazily.tsx";
import { useStore } from "../store-context.ts";
import { afterTheParcel } from "./later.ts";
import { Stage } from "./stage.tsx";

const Line = lazily(async () => (await import("../trench/trench-line.tsx")).TrenchLine);
const Desk = lazily(async () => (await import("../trench/trench-desk.tsx")).TrenchDesk);

/** How deep the trench goes, what lies in it and the earth that is moved; fetched once a plan is shown. */
export function TrenchStage() {
  const plan = useStore().shownPlan.value;
  if (!plan) return null;
  return (
    <Stage number={6} name="Trench" stage="trench" result={isBlank(plan.project) ? afterTheParcel : <Line />}>
      <Desk />
    </Stage>
  );
}

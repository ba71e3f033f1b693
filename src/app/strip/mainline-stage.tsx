import { isBlank } from "../../core/drawing/blank.ts";
import { lazily } from "../lazily.tsx";
import { useStore } from "../store-context.ts";
import { afterTheParcel } from "./later.ts";
import { Stage } from "./stage.tsx";

const Line = lazily(async () => (await import("../mainline/mainline-line.tsx")).MainlineLine);
const Desk = lazily(async () => (await import("../mainline/mainline-desk.tsx")).MainlineDesk);

/** Where the water comes from, where its main line runs, and which end of each row meets it; fetched once a plan is shown. */
export function MainlineStage() {
  const plan = useStore().shownPlan.value;
  if (!plan) return null;
  return (
    <Stage number={3} name="Main line" stage="mainline" result={isBlank(plan.project) ? afterTheParcel : <Line />}>
      <Desk />
    </Stage>
  );
}

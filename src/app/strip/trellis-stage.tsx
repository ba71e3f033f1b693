import { isBlank } from "../../core/drawing/blank.ts";
import { lazily } from "../lazily.tsx";
import { useStore } from "../store-context.ts";
import { afterTheParcel } from "./later.ts";
import { Stage } from "./stage.tsx";

const Line = lazily(async () => (await import("./trellis-line.tsx")).TrellisLine);
const Desk = lazily(async () => (await import("./trellis-desk.tsx")).TrellisDesk);

/** What the trellis takes; its line is fetched once a plan is shown, all that is set of it when the step is opened. */
export function TrellisStage() {
  const plan = useStore().shownPlan.value;
  if (!plan) return null;
  return (
    <Stage number={4} name="Trellis" stage="trellis" result={isBlank(plan.project) ? afterTheParcel : <Line />}>
      <Desk />
    </Stage>
  );
}

import { isBlank } from "../../core/drawing/blank.ts";
import { lazily } from "../lazily.tsx";
import { useStore } from "../store-context.ts";
import { afterTheParcel } from "./later.ts";
import { Stage } from "./stage.tsx";

const Line = lazily(async () => (await import("../drip/drip-line.tsx")).DripLine);
const Desk = lazily(async () => (await import("../drip/drip-desk.tsx")).DripDesk);

/** Whether the water is enough for every vine: sets, evenness, pressures, the year; fetched once a plan is shown. */
export function DripStage() {
  const plan = useStore().shownPlan.value;
  if (!plan) return null;
  return (
    <Stage number={5} name="Drip" stage="drip" result={isBlank(plan.project) ? afterTheParcel : <Line />}>
      <Desk />
    </Stage>
  );
}

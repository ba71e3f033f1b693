import { isBlank } from "../../core/drawing/blank.ts";
import { lazily } from "../lazily.tsx";
import { useStore } from "../store-context.ts";
import { afterTheParcel } from "./later.ts";
import { Stage } from "./stage.tsx";

const Desk = lazily(async () => (await import("../hand-over/hand-over-desk.tsx")).HandOverDesk);

/** Everything that leaves the screen: the project file and the plan in open formats; fetched when the step is opened. */
export function HandOver() {
  const plan = useStore().shownPlan.value;
  if (!plan) return null;
  return (
    <Stage number={8} name="Hand over" result={isBlank(plan.project) ? afterTheParcel : "open formats, project file"}>
      <Desk />
    </Stage>
  );
}

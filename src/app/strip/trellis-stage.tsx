import { isBlank } from "../../core/drawing/blank.ts";
import type { Plan } from "../../core/plan.ts";
import { linePostsAccount } from "../../core/rows/accounts.ts";
import { allWireAccount } from "../../core/trellis/accounts.ts";
import { lazily } from "../lazily.tsx";
import { useStore } from "../store-context.ts";
import { count } from "./count.ts";
import { afterTheParcel } from "./later.ts";
import { ResultLine } from "./result-line.tsx";
import { Stage } from "./stage.tsx";
import { wholeLength } from "./whole-length.ts";

const Desk = lazily(async () => (await import("./trellis-desk.tsx")).TrellisDesk);

/** What the trellis takes; all that is set of it is fetched when the step is opened. */
export function TrellisStage() {
  const plan = useStore().shownPlan.value;
  if (!plan) return null;
  return (
    <Stage number={4} name="Trellis" stage="trellis" result={<TrellisResult plan={plan} />}>
      <Desk />
    </Stage>
  );
}

function TrellisResult({ plan }: { readonly plan: Plan }) {
  const units = useStore().units.value;
  const { rows, trellis, project } = plan;
  if (!rows || !trellis) return <>{isBlank(project) ? afterTheParcel : "none yet"}</>;
  const wire_m = trellis.wires.reduce((sum, { length_m }) => sum + length_m, 0);
  return (
    <ResultLine
      parts={[
        {
          value: `${wholeLength(wire_m, units)} of wire`,
          label: "for all purposes",
          account: () => allWireAccount(trellis),
        },
        {
          value: count(rows.linePosts.station_m.length, "line post"),
          label: "in all rows",
          account: () => linePostsAccount(rows),
        },
      ]}
    />
  );
}

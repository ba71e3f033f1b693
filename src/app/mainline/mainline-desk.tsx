import "./mainline.css";
import type { Plan } from "../../core/plan.ts";
import { chooseRow } from "../commands/choose-row.ts";
import { useStore } from "../store-context.ts";
import { LineButtons } from "./line-buttons.tsx";
import { MainlineFields } from "./mainline-fields.tsx";
import { PinList } from "./pin-list.tsx";
import { RouteFigures } from "./route-figures.tsx";

/** All of the main line: what it is laid by, how it is drawn or found, what comes of it. */
export function MainlineDesk() {
  const plan = useStore().shownPlan.value;
  if (!plan) return null;
  const { project } = plan;
  return (
    <>
      <RouteWords plan={plan} />
      <LineButtons />
      <RouteFigures plan={plan} />
      <Unreached plan={plan} />
      <MainlineFields project={project} />
      <PinList pins={project.mainLine.pins} />
    </>
  );
}

/** What the route is at, in a sentence. */
function RouteWords({ plan: { project, mainline } }: { readonly plan: Plan }) {
  const state = useStore().routeState.value;
  return (
    <p class="route-words" role="status">
      {words()}
    </p>
  );

  function words(): string {
    if (project.sources.length === 0) {
      return "Draw the water source: the main line is laid from there. Until then each row meets the water at its start.";
    }
    if (state === "waiting") return "The route follows when you let go.";
    if (state === "asked") return "The route is being laid …";
    if (mainline?.route == null) return "No route was found; each row meets the water at its nearer end.";
    return project.mainLines.length > 0
      ? "The route keeps to the line that is drawn and is completed to every row. Drag its corners on the map."
      : "The route was found: trench and crossings together cost least.";
  }
}

/** Rows that no trench gets to, each to be looked at. */
function Unreached({ plan: { mainline, rows } }: { readonly plan: Plan }) {
  const store = useStore();
  const unreached = (mainline?.route?.unreached ?? []).flatMap((row) => rows?.rows[row] ?? []);
  if (unreached.length === 0) return null;
  return (
    <section class="unreached" aria-label="Rows without water">
      <h3>Rows that no trench gets to</h3>
      <p>
        {unreached.map(({ id }) => (
          <button key={id} type="button" class="quiet-button" onClick={() => chooseRow(store, id)}>
            Row {id}
          </button>
        ))}
      </p>
      <p class="aside">
        Say which roads, streams or fences may be crossed, let the trench run closer to things, or draw the main line
        there.
      </p>
    </section>
  );
}

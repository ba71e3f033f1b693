import { useState } from "preact/hooks";
import { text } from "../../core/units.ts";
import { useStore } from "../store-context.ts";
import { findAgain, takeOverRoute } from "./take-over.ts";

/** Draw the main line, bend the one that was found, or let it be found again. */
export function LineButtons() {
  const store = useStore();
  const [refusal, setRefusal] = useState<string | null>(null);
  const plan = store.shownPlan.value;
  const isDrawn = (plan?.project.mainLines.length ?? 0) > 0;
  const begin = (role: "main-line" | "source"): void => {
    setRefusal(null);
    void import("../drawing/sketch.ts").then(async ({ takeUp }) => {
      const { choices } = await import("../drawing/tools.ts");
      const tool = choices.flatMap(({ tools }) => tools).find((each) => each.role === role);
      if (tool) takeUp(store, tool);
    });
  };
  const attempt = (edited: ReturnType<typeof findAgain>): void => {
    const first = edited[0];
    setRefusal(first ? text(first.message, store.units.value) : null);
  };
  const hasRoute = plan?.mainline?.route != null;
  return (
    <>
      <p class="line-buttons">
        {plan?.project.sources.length === 0 && (
          <button type="button" class="strong-button" onClick={() => begin("source")}>
            Draw the water source
          </button>
        )}
        <button type="button" onClick={() => begin("main-line")}>
          Draw the main line
        </button>
        {hasRoute && !isDrawn && (
          <button type="button" onClick={() => attempt(takeOverRoute(store))}>
            Take this line over to change it
          </button>
        )}
        {isDrawn && (
          <button type="button" onClick={() => attempt(findAgain(store))}>
            Let it be found again
          </button>
        )}
      </p>
      {refusal && (
        <p class="field-refusal" role="alert">
          {refusal}
        </p>
      )}
    </>
  );
}

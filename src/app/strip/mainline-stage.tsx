import { isBlank } from "../../core/drawing/blank.ts";
import { waterEndsAccount } from "../../core/mainline/accounts.ts";
import { useStore } from "../store-context.ts";
import { count } from "./count.ts";
import { FigureList } from "./figure-list.tsx";
import { afterTheParcel } from "./later.ts";
import { Stage } from "./stage.tsx";

/** Where the water comes from, and which end of each row meets it. */
export function MainlineStage() {
  const plan = useStore().shownPlan.value;
  if (!plan) return null;
  const { mainline, project } = plan;
  const { sources } = project;
  const names = sources.map(({ name }) => name ?? "a source without a name");
  const result = sources.length === 0 ? "no water source yet" : `water from ${names.join(", ")}`;
  const of = (end: "start" | "end") => mainline?.waterEnd.filter((each) => each === end).length ?? 0;
  return (
    <Stage number={3} name="Main line" stage="mainline" result={isBlank(project) ? afterTheParcel : result}>
      <p>
        {sources.length === 0
          ? "Draw the water source on the map: each row meets the water at its end nearer to it. Until then the start counts."
          : `Water comes from ${names.join(" and ")}. Each row meets it at the nearer end.`}
      </p>
      {mainline && (
        <FigureList
          lines={[
            {
              name: "Water at the start",
              value: count(of("start"), "row"),
              account: () => waterEndsAccount(mainline, "start", sources),
            },
            {
              name: "Water at the end",
              value: count(of("end"), "row"),
              account: () => waterEndsAccount(mainline, "end", sources),
            },
          ]}
        />
      )}
      <p class="aside">The trench and its pipes are not planned yet.</p>
    </Stage>
  );
}

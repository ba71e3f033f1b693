import { isBlank } from "../../core/drawing/blank.ts";
import { shoppingLinesAccount } from "../../core/materials/accounts.ts";
import type { Plan } from "../../core/plan.ts";
import { vinesAccount } from "../../core/rows/accounts.ts";
import { lazily } from "../lazily.tsx";
import { useStore } from "../store-context.ts";
import { count } from "./count.ts";
import { afterTheParcel } from "./later.ts";
import { ResultLine } from "./result-line.tsx";
import { Stage } from "./stage.tsx";

const Desk = lazily(async () => (await import("../materials/materials-desk.tsx")).MaterialsDesk);

/** What to buy, what it costs and how coils are cut; the list itself is fetched when the step is opened. */
export function MaterialsStage() {
  const plan = useStore().shownPlan.value;
  if (!plan) return null;
  return (
    <Stage number={7} name="Materials" stage="materials" result={<MaterialsResult plan={plan} />}>
      <Desk />
    </Stage>
  );
}

function MaterialsResult({ plan }: { readonly plan: Plan }) {
  const { rows, materials, project } = plan;
  if (!rows) return <>{isBlank(project) ? afterTheParcel : "none yet"}</>;
  return (
    <ResultLine
      parts={[
        {
          value: count(rows.vines.station_m.length, "vine"),
          label: "without spares",
          account: () => vinesAccount(rows),
        },
        ...(materials
          ? [
              {
                value: `${count(materials.lines.length, "thing")} to buy`,
                label: "lines of the shopping list",
                account: () => shoppingLinesAccount(materials.lines),
              },
            ]
          : []),
      ]}
    />
  );
}

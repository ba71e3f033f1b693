import { isBlank } from "../../core/drawing/blank.ts";
import { emittersAccount, flowAccount, hoseClipsAccount, lateralsAccount } from "../../core/drip/accounts.ts";
import type { Plan } from "../../core/plan.ts";
import { formatQuantity } from "../../core/units.ts";
import { useStore } from "../store-context.ts";
import { BlockChoice } from "./block-choice.tsx";
import { count, grouped } from "./count.ts";
import { CountField } from "./count-field.tsx";
import { FigureList } from "./figure-list.tsx";
import { afterTheParcel } from "./later.ts";
import { More } from "./more.tsx";
import { QuantityField } from "./quantity-field.tsx";
import { ResultLine } from "./result-line.tsx";
import { Stage } from "./stage.tsx";
import { wholeLength } from "./whole-length.ts";

/** Emitters and hose: how much water all of it takes, before pressure is reckoned. */
export function DripStage() {
  const { shownPlan, block: blockSignal } = useStore();
  const [plan, block] = [shownPlan.value, blockSignal.value];
  if (!plan || !block) return null;
  const { emitterFlow_lph, emittersPerVine, overrun_m } = block.drip;
  return (
    <Stage number={5} name="Drip" stage="drip" result={<DripResult plan={plan} />}>
      <BlockChoice />
      <div class="fields" key={block.id}>
        <QuantityField label="Flow of one emitter" kind="flow" value={emitterFlow_lph} path="drip.emitterFlow" />
        <CountField label="Emitters at each vine" value={emittersPerVine} path="drip.emittersPerVine" />
      </div>
      <More>
        <QuantityField label="Hose past the last vine" kind="length" value={overrun_m} path="drip.overrun" />
      </More>
      <DripFigures plan={plan} />
      <p class="aside">Pressure, sets and pipe sizes are not planned yet.</p>
    </Stage>
  );
}

function DripResult({ plan }: { readonly plan: Plan }) {
  const units = useStore().units.value;
  const { rows, drip, project } = plan;
  if (!rows || !drip) return <>{isBlank(project) ? afterTheParcel : "none yet"}</>;
  return (
    <ResultLine
      parts={[
        {
          value: count(drip.emitters, "emitter"),
          label: "in all rows",
          account: () => emittersAccount(rows, project.blocks),
        },
        {
          value: formatQuantity("flow", drip.flow_lph, units),
          label: "for all at once",
          account: () => flowAccount(rows, project.blocks),
        },
      ]}
    />
  );
}

function DripFigures({ plan: { rows, drip, project } }: { readonly plan: Plan }) {
  const units = useStore().units.value;
  if (!rows || !drip) return null;
  const { blocks } = project;
  const clips = drip.rows.reduce((sum, { hoseClips }) => sum + hoseClips, 0);
  return (
    <FigureList
      lines={[
        {
          name: "Drip hose",
          how: "from the end post to past the last vine",
          value: wholeLength(drip.lateral_m, units),
          account: () => lateralsAccount(rows, drip, blocks),
        },
        { name: "Emitters", value: grouped(drip.emitters), account: () => emittersAccount(rows, blocks) },
        {
          name: "Water for all at once",
          how: "emitters times their flow",
          value: formatQuantity("flow", drip.flow_lph, units),
          account: () => flowAccount(rows, blocks),
        },
        { name: "Hose clips", value: grouped(clips), account: () => hoseClipsAccount(rows) },
      ]}
    />
  );
}

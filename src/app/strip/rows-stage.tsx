import { isBlank } from "../../core/drawing/blank.ts";
import type { Plan } from "../../core/plan.ts";
import {
  linePostsAccount,
  plantedAreaAccount,
  rowCountAccount,
  rowLengthSumAccount,
  vinesAccount,
} from "../../core/rows/accounts.ts";
import { formatQuantity } from "../../core/units.ts";
import { lazily } from "../lazily.tsx";
import { useStore } from "../store-context.ts";
import { BearingChart } from "./bearing-chart.tsx";
import { BearingField } from "./bearing-field.tsx";
import { BlockChoice } from "./block-choice.tsx";
import { ChoiceField } from "./choice-field.tsx";
import { count, grouped } from "./count.ts";
import { FigureList } from "./figure-list.tsx";
import { afterTheParcel } from "./later.ts";
import { More } from "./more.tsx";
import { QuantityField } from "./quantity-field.tsx";
import { ResultLine } from "./result-line.tsx";
import { RowList } from "./row-list.tsx";
import { ShortestRowField } from "./shortest-row-field.tsx";
import { Stage } from "./stage.tsx";
import { wholeLength } from "./whole-length.ts";

const MoreRowFields = lazily(async () => (await import("./more-row-fields.tsx")).MoreRowFields);

const rowEnds = [
  { value: "vines", label: "at whole vine spacings" },
  { value: "bays", label: "at whole bays" },
  { value: "all", label: "at the last millimetre" },
] as const;

/** Rows: where they run, how far apart, and each one with its length. */
export function RowsStage() {
  const { shownPlan: planSignal, block: blockSignal } = useStore();
  const [plan, block] = [planSignal.value, blockSignal.value];
  if (!plan || !block) return null;
  return (
    <Stage number={2} name="Rows" stage="rows" result={<RowsResult plan={plan} />} startsOpen={!isBlank(plan.project)}>
      <BlockChoice />
      <div class="fields" key={block.id}>
        <BearingField />
        <QuantityField label="Row spacing" kind="length" value={block.rows.rowSpacing_m} path="rows.rowSpacing" />
        <QuantityField label="Vine spacing" kind="length" value={block.rows.vineSpacing_m} path="rows.vineSpacing" />
        <QuantityField label="Headland" kind="length" value={block.rows.headland_m} path="rows.headland" />
        <ShortestRowField />
        <ChoiceField label="Rows end" value={block.rows.rowEnd} path="rows.rowEnd" choices={rowEnds} />
        <More>
          <MoreRowFields />
        </More>
      </div>
      {plan.rows && (
        <>
          <RowFigures plan={plan} />
          <h3>What each bearing holds</h3>
          <BearingChart />
          <h3>Row list</h3>
          <RowList />
        </>
      )}
    </Stage>
  );
}

function lengthOf({ rows }: Plan): number {
  return rows?.blocks.reduce((sum, { length_m }) => sum + length_m, 0) ?? 0;
}

function plantedOf({ rows }: Plan): number {
  return rows?.blocks.reduce((sum, { plantedArea_m2 }) => sum + plantedArea_m2, 0) ?? 0;
}

function RowsResult({ plan }: { readonly plan: Plan }) {
  const units = useStore().units.value;
  const { rows, project } = plan;
  if (!rows) return <>{isBlank(project) ? afterTheParcel : "none yet"}</>;
  return (
    <ResultLine
      parts={[
        {
          value: count(rows.rows.length, "row"),
          label: "planned",
          account: () => rowCountAccount(rows, project.blocks),
        },
        {
          value: wholeLength(lengthOf(plan), units),
          label: "row length",
          account: () => rowLengthSumAccount(rows),
        },
        {
          value: formatQuantity("area", plantedOf(plan), units, 2),
          label: "planted",
          account: () => plantedAreaAccount(rows, project.blocks),
        },
      ]}
    />
  );
}

function RowFigures({ plan }: { readonly plan: Plan }) {
  const units = useStore().units.value;
  const { rows, project } = plan;
  if (!rows) return null;
  return (
    <FigureList
      lines={[
        { name: "Rows", value: grouped(rows.rows.length), account: () => rowCountAccount(rows, project.blocks) },
        {
          name: "Row length",
          how: "end post to end post",
          value: wholeLength(lengthOf(plan), units),
          account: () => rowLengthSumAccount(rows),
        },
        {
          name: "Planted area",
          how: "row length times row spacing",
          value: formatQuantity("area", plantedOf(plan), units),
          account: () => plantedAreaAccount(rows, project.blocks),
        },
        {
          name: "Vines",
          how: "without spares",
          value: grouped(rows.vines.station_m.length),
          account: () => vinesAccount(rows),
        },
        {
          name: "Line posts",
          how: "between the end posts",
          value: grouped(rows.linePosts.station_m.length),
          account: () => linePostsAccount(rows),
        },
      ]}
    />
  );
}

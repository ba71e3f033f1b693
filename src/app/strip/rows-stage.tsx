import { formatQuantity } from "../../core/units.ts";
import { useStore } from "../store-context.ts";
import { BearingChart } from "./bearing-chart.tsx";
import { BearingField } from "./bearing-field.tsx";
import { BlockChoice } from "./block-choice.tsx";
import { count } from "./count.ts";
import { MoreRowFields } from "./more-row-fields.tsx";
import { QuantityField } from "./quantity-field.tsx";
import { RowList } from "./row-list.tsx";
import { ShortestRowField } from "./shortest-row-field.tsx";
import { Stage } from "./stage.tsx";

/** Rows: where they run, how far apart, and each one with its length. */
export function RowsStage() {
  const { shownPlan: planSignal, block: blockSignal, units } = useStore();
  const [plan, block] = [planSignal.value, blockSignal.value];
  if (!plan || !block) return null;
  const length_m = plan.rows?.blocks.reduce((sum, { length_m: part }) => sum + part, 0) ?? 0;
  const result = plan.rows
    ? `${count(plan.rows.rows.length, "row")}, ${formatQuantity("length", length_m, units.value, 0)}`
    : "none yet";
  return (
    <Stage number={2} name="Rows" result={result} startsOpen>
      <BlockChoice />
      <div class="fields" key={block.id}>
        <BearingField />
        <QuantityField label="Row spacing" kind="length" value={block.rows.rowSpacing_m} path="rows.rowSpacing" />
        <QuantityField label="Vine spacing" kind="length" value={block.rows.vineSpacing_m} path="rows.vineSpacing" />
        <QuantityField label="Headland" kind="length" value={block.rows.headland_m} path="rows.headland" />
        <ShortestRowField />
        <MoreRowFields />
      </div>
      <h3>What each bearing holds</h3>
      <BearingChart />
      <h3>Row list</h3>
      <RowList />
    </Stage>
  );
}

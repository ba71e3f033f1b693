import { useStore } from "../store-context.ts";
import { ChoiceField } from "./choice-field.tsx";
import { QuantityField } from "./quantity-field.tsx";

const rowEnds = [
  { value: "vines", label: "at whole vine spacings" },
  { value: "bays", label: "at whole bays" },
  { value: "all", label: "at the last millimetre" },
] as const;
const trims = [
  { value: "both", label: "from both ends" },
  { value: "start", label: "from the start" },
  { value: "end", label: "from the end" },
] as const;
const vinePlaces = [
  { value: "centred", label: "centred in the row" },
  { value: "from-start", label: "from the start" },
  { value: "aligned", label: "in line across rows" },
] as const;
const sides = [
  { value: "left", label: "west or north" },
  { value: "right", label: "east or south" },
] as const;

/** Fields that are set once and seldom touched. */
export function MoreRowFields() {
  const rows = useStore().block.value?.rows;
  if (!rows) return null;
  return (
    <>
      <ChoiceField label="Rows end" value={rows.rowEnd} path="rows.rowEnd" choices={rowEnds} />
      <details class="more">
        <summary>More</summary>
        <div class="fields">
          <ChoiceField label="Leftover is taken" value={rows.trim} path="rows.trim" choices={trims} />
          <ChoiceField label="Vines" value={rows.vines} path="rows.vines" choices={vinePlaces} />
          <ChoiceField label="Row 1 on the side" value={rows.firstSide} path="rows.firstSide" choices={sides} />
          <QuantityField label="End post to first vine" kind="length" value={rows.endGap_m} path="rows.endGap" />
          <QuantityField label="End post to anchor" kind="length" value={rows.anchorOut_m} path="rows.anchorOut" />
        </div>
      </details>
    </>
  );
}

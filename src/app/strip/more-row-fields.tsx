import { changeSetting } from "../commands/change-setting.ts";
import { useStore } from "../store-context.ts";
import { ChoiceField } from "./choice-field.tsx";
import { CountField } from "./count-field.tsx";
import { QuantityField } from "./quantity-field.tsx";

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
const baySorts = [
  { value: "whole-vines", label: "of whole vine spacings" },
  { value: "equal", label: "of equal length" },
] as const;
const reaches = [
  { value: "end-post", label: "to the end post" },
  { value: "anchor", label: "to the anchor" },
] as const;

/** Fields that are set once and seldom touched. */
export function MoreRowFields() {
  const rows = useStore().block.value?.rows;
  if (!rows) return null;
  return (
    <>
      <RowOneField />
      <ChoiceField label="Row 1 on the side" value={rows.firstSide} path="rows.firstSide" choices={sides} />
      <ChoiceField label="Leftover is taken" value={rows.trim} path="rows.trim" choices={trims} />
      <ChoiceField label="Vines" value={rows.vines} path="rows.vines" choices={vinePlaces} />
      <QuantityField label="End post to first vine" kind="length" value={rows.endGap_m} path="rows.endGap" />
      <CountField label="Vines in a bay" value={rows.bay_vines} path="rows.bay" />
      <ChoiceField label="Bays" value={rows.bays} path="rows.bays" choices={baySorts} />
      <ChoiceField label="Distances count" value={rows.distancesTo} path="rows.distancesTo" choices={reaches} />
      <QuantityField label="End post to anchor" kind="length" value={rows.anchorOut_m} path="rows.anchorOut" />
      <QuantityField
        label="Cost of two row ends"
        kind="length"
        value={rows.rowCost_m}
        path="rows.rowCost"
        hint="as a length of row, for the chart"
      />
    </>
  );
}

const places = [
  { value: "centred", label: "rows centred" },
  { value: "most-row", label: "where most row fits" },
  { value: "from-side", label: "a distance from the side" },
] as const;
const byHand = [{ value: "through", label: "through a place on the map" }] as const;

/** Where row 1 lies, and how far from the side when that is what counts. */
function RowOneField() {
  const store = useStore();
  const block = store.block.value;
  if (!block) return null;
  const { rowOne, rowSpacing_m } = block.rows;
  return (
    <>
      <ChoiceField
        label="Row 1 lies"
        value={rowOne.kind}
        path="rows.rowOne"
        choices={rowOne.kind === "through" ? [...places, ...byHand] : places}
        change={(chosen, step) =>
          changeSetting(store, "rows.rowOne", chosen === "from-side" ? { fromSide: rowSpacing_m } : chosen, step)
        }
      />
      {rowOne.kind === "from-side" && (
        <QuantityField
          label="Row 1 from the side"
          kind="length"
          value={rowOne.distance_m}
          path="rows.rowOne.fromSide"
        />
      )}
    </>
  );
}

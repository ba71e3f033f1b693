import { parseQuantity } from "../../core/units.ts";
import { changeSetting } from "../commands/change-setting.ts";
import { useStore } from "../store-context.ts";
import { QuantityField } from "../strip/quantity-field.tsx";

const foot_m = 0.3048;

/** Water that the soil holds: the file says it for a metre of depth; where inches are used it is spoken of by the foot. */
export function SoilField({ soil_mmpm }: { readonly soil_mmpm: number }) {
  const store = useStore();
  const isUs = store.units.value === "us";
  const of_m = isUs ? foot_m : 1;
  return (
    <QuantityField
      label={isUs ? "Water a foot of soil holds for roots" : "Water a metre of soil holds for roots"}
      kind="depth"
      value={soil_mmpm * of_m}
      path="season.soil"
      hint={isUs ? "sand 1 in, loam 1.8 in, clay 2 in" : "sand 80 mm, loam 150 mm, clay 170 mm"}
      change={(meant, step) => {
        const parsed = parseQuantity("depth", meant);
        const soil = parsed.ok ? Math.round((parsed.value / of_m) * 100) / 100 : 0;
        return changeSetting(store, "season.soil", soil, step);
      }}
    />
  );
}

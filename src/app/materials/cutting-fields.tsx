import { formatQuantity, parseQuantity } from "../../core/units.ts";
import { changeSetting } from "../commands/change-setting.ts";
import { useStore } from "../store-context.ts";
import { ChoiceField } from "../strip/choice-field.tsx";
import { Field } from "../strip/field.tsx";
import { More } from "../strip/more.tsx";
import { QuantityField } from "../strip/quantity-field.tsx";
import { withShownUnit } from "../typed-quantity.ts";
import { money, typedMoney } from "./money.ts";

const joins = [
  { value: "allowed", label: "allowed, mid-bay" },
  { value: "forbidden", label: "forbidden" },
] as const;

/** How coils are cut up: what is kept back, what a cut loses, joins and their price, and how heavy a coil may be. */
export function CuttingFields() {
  const store = useStore();
  const units = store.units.value;
  const materials = store.shownPlan.value?.project.materials;
  if (!materials) return null;
  const { cutting, currency } = materials;
  const heaviest = (typed: string, joined: string) => {
    if (typed.trim() === "") {
      return changeSetting(store, "materials.heaviestCoil", null, { name: "Any coil", joins: joined });
    }
    const meant = withShownUnit(typed, "mass", cutting.heaviestCoil_kg ?? 1, units);
    const parsed = parseQuantity("mass", meant);
    if (!parsed.ok) return `“${typed}” was not understood: ${parsed.reason}.`;
    return changeSetting(store, "materials.heaviestCoil", meant, {
      name: `Heaviest coil ${formatQuantity("mass", parsed.value, units)}`,
      joins: joined,
    });
  };
  const joinPrice = (path: string, label: string) => (typed: string, joined: string) => {
    if (typed.trim() === "") return changeSetting(store, path, null, { name: `${label} not priced`, joins: joined });
    const price = typedMoney(typed);
    if (price === null) return "Write the number alone. Empty is not priced.";
    return changeSetting(store, path, price, { name: `${label} ${money(price, currency)}`, joins: joined });
  };
  const wireJoin = "Price of a join of wire";
  const hoseJoin = "Price of a join of hose";
  return (
    <>
      <div class="fields cutting">
        <ChoiceField label="Joins of wire" value={cutting.wireJoins} path="materials.wireJoins" choices={joins} />
        <ChoiceField label="Joins of hose" value={cutting.hoseJoins} path="materials.hoseJoins" choices={joins} />
        <QuantityField
          label="Kept back on every coil"
          kind="length"
          value={cutting.reserve_m}
          path="materials.coilReserve"
        />
        <QuantityField
          label="and a share of it"
          kind="ratio"
          value={cutting.reserve_ratio}
          path="materials.coilReserveShare"
        />
        <QuantityField label="Lost at every cut" kind="length" value={cutting.slop_m} path="materials.cutSlop" />
        <Field
          label="Heaviest coil you can handle"
          shown={cutting.heaviestCoil_kg === null ? "" : formatQuantity("mass", cutting.heaviestCoil_kg, units)}
          hint={cutting.heaviestCoil_kg === null ? "empty: any" : "heavier ones are not bought"}
          apply={heaviest}
        />
      </div>
      <More>
        <QuantityField
          label="Wire or hose that a join takes"
          kind="length"
          value={cutting.joinLength_m}
          path="materials.joinLength"
        />
        <Field
          label={wireJoin}
          shown={cutting.wireJoinPrice === null ? "" : money(cutting.wireJoinPrice, null)}
          apply={joinPrice("materials.wireJoinPrice", wireJoin)}
        />
        <Field
          label={hoseJoin}
          shown={cutting.hoseJoinPrice === null ? "" : money(cutting.hoseJoinPrice, null)}
          apply={joinPrice("materials.hoseJoinPrice", hoseJoin)}
        />
      </More>
    </>
  );
}

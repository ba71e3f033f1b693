import type { Json, MainLineSettings } from "../../core/project/project.ts";
import { inUnit } from "../../core/units.ts";
import { changeSetting } from "../commands/change-setting.ts";
import { money, typedMoney } from "../materials/money.ts";
import { useStore } from "../store-context.ts";
import { Field } from "../strip/field.tsx";

interface PriceFieldProps {
  readonly label: string;
  /** null: not priced. */
  readonly amount: number | null;
  readonly path: string;
  readonly asWritten: (amount: number) => Json;
}

/** What a metre of trench and a crossing cost; the route is chosen by it. */
export function PriceFields({ settings }: { readonly settings: MainLineSettings }) {
  const isUs = useStore().units.value === "us";
  const per = isUs ? "ft" : "m";
  const { trenchPrice_pm, crossingPrice } = settings;
  return (
    <>
      <PriceField
        label={`A ${isUs ? "foot" : "metre"} of trench, dug and filled`}
        amount={trenchPrice_pm === null ? null : trenchPrice_pm / inUnit("length", 1, per)}
        path="mainLine.trenchPrice"
        asWritten={(price) => ({ price, per: `1 ${per}` })}
      />
      <PriceField
        label="A crossing"
        amount={crossingPrice}
        path="mainLine.crossingPrice"
        asWritten={(price) => price}
      />
    </>
  );
}

function PriceField({ label, amount, path, asWritten }: PriceFieldProps) {
  const store = useStore();
  const currency = store.shownPlan.value?.project.materials.currency ?? null;
  const apply = (typed: string, joins: string) => {
    if (typed.trim() === "") return changeSetting(store, path, null, { name: `${label} not priced`, joins });
    const price = typedMoney(bare(typed, currency));
    if (price === null) return `“${typed}” was not understood: an amount such as 12.50 is wanted.`;
    return changeSetting(store, path, asWritten(price), { name: `${label} ${money(price, currency)}`, joins });
  };
  return (
    <Field
      label={label}
      shown={amount === null ? "" : money(amount, currency)}
      apply={apply}
      {...(amount === null && { hint: "empty: not priced" })}
    />
  );
}

/** What was typed without the currency that it is shown with. */
function bare(typed: string, currency: string | null): string {
  return currency === null ? typed : typed.replace(currency, "");
}

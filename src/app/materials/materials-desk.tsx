import "./materials.css";
import { CompareDoor } from "../compare/compare-door.tsx";
import { useStore } from "../store-context.ts";
import { CoilPlans } from "./coil-plans.tsx";
import { CuttingFields } from "./cutting-fields.tsx";
import { PackFields } from "./pack-fields.tsx";
import { PriceFiles } from "./price-files.tsx";
import { ShoppingList } from "./shopping-list.tsx";
import { Totals } from "./totals.tsx";

/** Everything of the Materials step: what to buy, what it costs, how coils are cut, and what a change would save. */
export function MaterialsDesk() {
  const plan = useStore().shownPlan.value;
  if (!plan?.materials || !plan.rows) return <PackFields />;
  return (
    <>
      <ShoppingList plan={plan} materials={plan.materials} />
      <Totals plan={plan} materials={plan.materials} />
      <CompareDoor />
      <CoilPlans plan={plan} coils={plan.materials.coils} />
      <CuttingFields />
      <PriceFiles plan={plan} />
      <PackFields />
    </>
  );
}

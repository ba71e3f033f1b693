import "./totals.css";
import type { MaterialCost } from "../../core/materials/material-line.ts";
import type { Materials } from "../../core/materials/materials.ts";
import type { Plan } from "../../core/plan.ts";
import { formatQuantity, type UnitSystem } from "../../core/units.ts";
import { changeSetting } from "../commands/change-setting.ts";
import { useStore } from "../store-context.ts";
import { count } from "../strip/count.ts";
import { Field } from "../strip/field.tsx";
import { money } from "./money.ts";
import { Shares } from "./shares.tsx";

interface TotalsProps {
  readonly plan: Plan;
  readonly materials: Materials;
}

/** What it comes to: the whole, each block and each row. */
export function Totals({ plan, materials }: TotalsProps) {
  const store = useStore();
  const units = store.units.value;
  const { currency } = plan.project.materials;
  const { cost, blockCosts, rowCosts } = materials;
  const blocks = plan.project.blocks;
  const rows = plan.rows?.rows ?? [];
  return (
    <>
      <h3>What it comes to</h3>
      <p class="total" aria-live="polite">
        <strong>{costText(cost, currency)}</strong>
        {cost.unpriced > 0 && cost.price > 0 && (
          <small>{count(cost.unpriced, "line")} of the list not priced: this is not the whole.</small>
        )}
        {massOf(cost, units)}
      </p>
      {plan.rows && cost.price > 0 && <Shares cost={cost} rows={plan.rows} currency={currency} units={units} />}
      {blocks.length > 1 && blockCosts.length === blocks.length && (
        <CostTable
          name="Block"
          units={units}
          currency={currency}
          costs={blocks.map((block, i) => ({ name: block.name, cost: blockCosts[i] ?? null }))}
        />
      )}
      {rowCosts.length > 0 && cost.price > 0 && (
        <details class="more">
          <summary>A row at a time</summary>
          <CostTable
            name="Row"
            units={units}
            currency={currency}
            costs={rows.map((row, i) => ({ name: row.id, cost: rowCosts[i] ?? null }))}
          />
        </details>
      )}
      <Field
        label="Currency"
        shown={currency ?? ""}
        hint="as you write it; prices are not converted"
        apply={(typed, joins) => {
          const name = typed.trim();
          return changeSetting(store, "materials.currency", name === "" ? null : name, {
            name: `Currency ${name}`,
            joins,
          });
        }}
      />
    </>
  );
}

interface CostTableProps {
  readonly name: string;
  readonly units: UnitSystem;
  readonly currency: string | null;
  readonly costs: readonly { readonly name: string; readonly cost: MaterialCost | null }[];
}

function CostTable({ name, units, currency, costs }: CostTableProps) {
  return (
    <table class="costs">
      <caption class="unseen">Cost by {name.toLowerCase()}</caption>
      <thead>
        <tr>
          <th scope="col">{name}</th>
          <th scope="col">Price</th>
          <th scope="col">Mass, where known</th>
        </tr>
      </thead>
      <tbody>
        {costs.map(({ name: told, cost }) => (
          <tr key={told}>
            <th scope="row">{told}</th>
            <td>{cost === null ? "" : costText(cost, currency)}</td>
            <td>{cost === null ? "" : formatQuantity("mass", cost.mass_kg, units)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** Nothing priced is not a price of nothing. */
function costText({ price, unpriced }: MaterialCost, currency: string | null): string {
  return price === 0 && unpriced > 0 ? "not priced yet" : money(price, currency);
}

function massOf({ mass_kg }: MaterialCost, units: UnitSystem) {
  return mass_kg > 0 ? (
    <small>{formatQuantity("mass", mass_kg, units)} to carry, of what has a known mass</small>
  ) : null;
}

import "./totals.css";
import type { Account } from "../../core/account.ts";
import {
  massOfAllAccount,
  massOfRowsAccount,
  priceOfAllAccount,
  priceOfRowsAccount,
} from "../../core/materials/cost-accounts.ts";
import type { MaterialCost } from "../../core/materials/material-line.ts";
import type { Materials } from "../../core/materials/materials.ts";
import type { Plan } from "../../core/plan.ts";
import { formatQuantity, type UnitSystem } from "../../core/units.ts";
import { changeSetting } from "../commands/change-setting.ts";
import { Figure } from "../figure/figure.tsx";
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
        <strong>
          <Cost
            cost={cost}
            currency={currency}
            label="price of the list"
            account={() => priceOfAllAccount(materials)}
          />
        </strong>
        {cost.unpriced > 0 && cost.price > 0 && (
          <small>{count(cost.unpriced, "line")} of the list not priced: this is not the whole.</small>
        )}
        {cost.mass_kg > 0 && (
          <small>
            <Figure
              value={formatQuantity("mass", cost.mass_kg, units)}
              label="to carry"
              account={() => massOfAllAccount(materials)}
            />{" "}
            to carry, of what has a known mass
          </small>
        )}
      </p>
      {plan.rows && cost.price > 0 && (
        <Shares materials={materials} rows={plan.rows} currency={currency} units={units} />
      )}
      {blocks.length > 1 && blockCosts.length === blocks.length && (
        <CostTable
          name="Block"
          units={units}
          currency={currency}
          materials={materials}
          costs={blocks.map((block, i) => ({
            name: block.name,
            cost: blockCosts[i] ?? null,
            rows: rows.flatMap((row, n) => (row.block === block.id ? [n] : [])),
          }))}
        />
      )}
      {rowCosts.length > 0 && cost.price > 0 && (
        <details class="more">
          <summary>A row at a time</summary>
          <CostTable
            name="Row"
            units={units}
            currency={currency}
            materials={materials}
            costs={rows.map((row, i) => ({ name: row.id, cost: rowCosts[i] ?? null, rows: [i] }))}
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
  readonly materials: Materials;
  /** Rows by their places in the plan. */
  readonly costs: readonly {
    readonly name: string;
    readonly cost: MaterialCost | null;
    readonly rows: readonly number[];
  }[];
}

function CostTable({ name, units, currency, materials, costs }: CostTableProps) {
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
        {costs.map(({ name: told, cost, rows }) => (
          <tr key={told}>
            <th scope="row">{told}</th>
            <td>
              {cost !== null && (
                <Cost
                  cost={cost}
                  currency={currency}
                  label={`price of ${name.toLowerCase()} ${told}`}
                  account={() => priceOfRowsAccount(materials, rows)}
                />
              )}
            </td>
            <td>
              {cost !== null && (
                <Figure
                  value={formatQuantity("mass", cost.mass_kg, units)}
                  label={`mass of ${name.toLowerCase()} ${told}`}
                  account={() => massOfRowsAccount(materials, rows)}
                />
              )}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

interface CostProps {
  readonly cost: MaterialCost;
  readonly currency: string | null;
  readonly label: string;
  readonly account: () => Account;
}

/** A price that tells how it came about. Nothing priced is not a price of nothing. */
function Cost({ cost: { price, unpriced }, currency, label, account }: CostProps) {
  if (price === 0 && unpriced > 0) return <>not priced yet</>;
  return <Figure value={money(price, currency)} label={label} account={account} />;
}

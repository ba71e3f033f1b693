import { useId, useState } from "preact/hooks";
import type { MaterialLine } from "../../core/materials/material-line.ts";
import type { Materials } from "../../core/materials/materials.ts";
import type { Plan } from "../../core/plan.ts";
import { Figure } from "../figure/figure.tsx";
import { useStore } from "../store-context.ts";
import { lineAccounts } from "./line-accounts.ts";
import { LineDetail } from "./line-detail.tsx";
import { amountText, lineName, packsText } from "./line-text.ts";
import { money } from "./money.ts";

interface ShoppingListProps {
  readonly plan: Plan;
  readonly materials: Materials;
}

/** The shopping list, a line an article; a line opens to what is there already and to its packages and prices. */
export function ShoppingList({ plan, materials }: ShoppingListProps) {
  const accounts = lineAccounts(plan);
  return (
    <>
      <h3>Shopping list</h3>
      <p class="aside">Open a line to say what you have already, how it is sold and what it costs.</p>
      <table class="materials">
        <caption class="unseen">Shopping list</caption>
        <thead>
          <tr>
            <th scope="col">Need</th>
            <th scope="col">Buy</th>
            <th scope="col">Price</th>
          </tr>
        </thead>
        {materials.lines.map((line, i) => (
          <Line key={line.article} plan={plan} line={line} accounts={() => accounts(i)} />
        ))}
      </table>
    </>
  );
}

interface LineProps {
  readonly plan: Plan;
  readonly line: MaterialLine;
  readonly accounts: () => ReturnType<ReturnType<typeof lineAccounts>>;
}

function Line({ plan, line, accounts }: LineProps) {
  const units = useStore().units.value;
  const [isOpen, setOpen] = useState(false);
  const id = useId();
  const { currency } = plan.project.materials;
  const name = lineName(line, units);
  return (
    <tbody class={isOpen ? "line-open" : undefined}>
      <tr>
        <th scope="rowgroup" colSpan={3}>
          <button
            type="button"
            class="line-door"
            aria-expanded={isOpen}
            aria-controls={isOpen ? id : undefined}
            onClick={() => setOpen(!isOpen)}
          >
            {name}
          </button>
          <small>{line.purpose}</small>
          {line.isTwoPersonLift && (
            <small class="two-people">
              <span aria-hidden="true">△ </span>two people or a machine
            </small>
          )}
        </th>
      </tr>
      <tr class="line-numbers">
        <td>
          <Figure
            value={amountText(line.quantity, line.unit, units)}
            label={`${name}, needed with spare`}
            account={() => accounts()?.quantity ?? null}
          />
          {line.onHand > 0 && <small>{amountText(line.onHand, line.unit, units)} there</small>}
        </td>
        <td class="to-buy">
          <Figure value={packsText(line, units)} label={`${name}, to buy`} account={() => accounts()?.packs ?? null} />
        </td>
        <td class="price">
          {line.price === null ? (
            <span class="not-priced">not priced</span>
          ) : (
            <Figure
              value={money(line.price, currency)}
              label={`price of ${name}`}
              account={() => accounts()?.price ?? null}
            />
          )}
        </td>
      </tr>
      {isOpen && (
        <tr class="line-detail" id={id}>
          <td colSpan={3}>
            <LineDetail plan={plan} line={line} name={name} accounts={accounts} />
          </td>
        </tr>
      )}
    </tbody>
  );
}

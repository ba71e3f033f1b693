import type { LineAccounts } from "../../core/materials/accounts.ts";
import type { MaterialLine } from "../../core/materials/material-line.ts";
import type { Plan } from "../../core/plan.ts";
import { formatQuantity } from "../../core/units.ts";
import { useStore } from "../store-context.ts";
import { FigureList } from "../strip/figure-list.tsx";
import { amountText, packsText, sizeText } from "./line-text.ts";
import { money } from "./money.ts";
import { PackageFields } from "./package-fields.tsx";
import { CoilStock, PieceStock } from "./stock-fields.tsx";

interface LineDetailProps {
  readonly plan: Plan;
  readonly line: MaterialLine;
  readonly name: string;
  readonly accounts: () => LineAccounts | null;
}

/** One article in full: how much of it and why, what is there already, and how it is sold. */
export function LineDetail({ plan, line, name, accounts }: LineDetailProps) {
  const units = useStore().units.value;
  const { currency } = plan.project.materials;
  const amount = (value: number) => amountText(value, line.unit, units);
  return (
    <>
      <FigureList
        lines={[
          { name: "In the structure", value: amount(line.needed), account: () => accounts()?.needed ?? null },
          ...(line.spare > 0
            ? [
                { name: "To spare", value: amount(line.spare), account: null },
                {
                  name: "Needed",
                  how: "with spare",
                  value: amount(line.quantity),
                  account: () => accounts()?.quantity ?? null,
                },
              ]
            : []),
          { name: "There already", value: amount(line.onHand), account: () => accounts()?.onHand ?? null },
          { name: "To buy", value: packsText(line, units), account: () => accounts()?.packs ?? null },
          ...line.packs.flatMap(({ size, price }) =>
            price === null
              ? []
              : [
                  {
                    name: "Price of one",
                    how: sizeText(size, line.unit, units),
                    value: money(price, currency),
                    account: null,
                  },
                ],
          ),
          {
            name: "Price",
            value: line.price === null ? "not priced" : money(line.price, currency),
            account: line.price === null ? null : () => accounts()?.price ?? null,
          },
          {
            name: "Mass",
            value: line.mass_kg === null ? "not known" : formatQuantity("mass", line.mass_kg, units),
            account: line.mass_kg === null ? null : () => accounts()?.mass ?? null,
          },
        ]}
      />
      {line.unit === "m" ? (
        <CoilStock article={line.article} name={name} />
      ) : (
        <PieceStock article={line.article} name={name} />
      )}
      <PackageFields plan={plan} line={line} name={name} />
    </>
  );
}

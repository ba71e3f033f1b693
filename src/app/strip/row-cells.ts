import type { Account } from "../../core/account.ts";
import { lateralAccount } from "../../core/drip/accounts.ts";
import type { Plan } from "../../core/plan.ts";
import { rowLengthAccount, rowLinePostsAccount, rowVinesAccount } from "../../core/rows/row-accounts.ts";
import { formatQuantity, type UnitSystem } from "../../core/units.ts";
import { grouped } from "./count.ts";

export interface RowCell {
  readonly value: string;
  readonly label: string;
  readonly account: () => Account | null;
}

/** The numbers of one line of the row table. */
export function rowCells(plan: Plan, i: number, units: UnitSystem): readonly RowCell[] {
  const { rows, drip, mainline, project } = plan;
  const row = rows?.rows[i];
  const block = project.blocks.find(({ id }) => id === row?.block);
  if (!rows || !row || !block) return [];
  const lateral_m = drip?.rows[i]?.lateral_m ?? 0;
  const of = (what: string) => `${what} of row ${row.id}`;
  return [
    {
      value: formatQuantity("length", row.length_m, units, 2),
      label: of("length"),
      account: () => rowLengthAccount(row, block.rows),
    },
    { value: grouped(row.vines), label: of("vines"), account: () => rowVinesAccount(rows, i, block.rows) },
    {
      value: grouped(row.linePosts),
      label: of("line posts"),
      account: () => rowLinePostsAccount(rows, i, block.rows),
    },
    {
      value: formatQuantity("length", lateral_m, units, 1),
      label: of("hose"),
      account: () => lateralAccount(row, lateral_m, mainline?.waterEnd[i] ?? "start", block.drip),
    },
  ];
}

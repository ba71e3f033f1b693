import { type LineAccounts, materialAccounts } from "../../core/materials/accounts.ts";
import type { Plan } from "../../core/plan.ts";

/** How every line of the shopping list came about, reckoned once, when someone first asks. */
export function lineAccounts(plan: Plan): (line: number) => LineAccounts | null {
  let reckoned: readonly LineAccounts[] | null = null;
  return (line) => {
    const { materials, project } = plan;
    if (!materials) return null;
    reckoned ??= materialAccounts(materials, project.materials);
    return reckoned[line] ?? null;
  };
}

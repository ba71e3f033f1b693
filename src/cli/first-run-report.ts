import { firstRunSheet, type Plan, type UnitSystem } from "../core/index.ts";
import { table } from "./table.ts";
import { wrapped } from "./wrapped.ts";

/** What to hold against the first run: cups of three minutes at the first, middle and last vine of some rows, and the pressure at the end of their hose. */
export function firstRunReport(plan: Plan, units: UnitSystem): string {
  const sheet = firstRunSheet(plan, units);
  if (sheet === null) return "";
  const { steps, checks, cautions } = sheet;
  const cup = (at: string) => checks.map(({ cups }) => cups.find((each) => each.at === at)?.volume ?? "");
  return [
    "First run:\n",
    ...steps.map((step, i) => wrapped(`${i + 1}. ${step}`, "  ")),
    table([
      { head: "set", cells: checks.map(({ set }) => set) },
      { head: "row", cells: checks.map(({ row }) => row) },
      ...["first vine", "middle vine", "last vine"].map((at) => ({
        head: at,
        cells: cup(at),
        isNumber: true as const,
      })),
      { head: "end of the hose", cells: checks.map(({ tail }) => tail), isNumber: true },
    ]),
    ...cautions.map((caution) => wrapped(caution, "")),
  ].join("");
}

import { formatQuantity, type Plan, type UnitSystem } from "../core/index.ts";
import { table } from "./table.ts";

const when = { closed: "valves closed", running: "running", surge: "a valve closing" } as const;

/** The highest pressures against what pipe, hose and emitters stand. */
export function pressureReport({ watering: watered, rows }: Plan, units: UnitSystem): string {
  const highest = watered?.watering?.highest ?? [];
  if (watered === null || highest.length === 0) return "";
  const pressure = (kpa: number) => formatQuantity("pressure", kpa, units);
  return table([
    {
      head: "highest pressure",
      cells: highest.map(({ what, lateral }) => {
        const row = rows?.rows[watered.job.laterals.row[lateral] ?? -1]?.id;
        return row === undefined ? what : `${what}, row ${row}`;
      }),
    },
    { head: "when", cells: highest.map((each) => when[each.when]) },
    { head: "is", cells: highest.map(({ pressure_kpa }) => pressure(pressure_kpa)), isNumber: true },
    { head: "stands", cells: highest.map(({ most_kpa }) => pressure(most_kpa)), isNumber: true },
    { head: "", cells: highest.map(({ pressure_kpa, most_kpa }) => (pressure_kpa > most_kpa ? "too much" : "")) },
  ]);
}

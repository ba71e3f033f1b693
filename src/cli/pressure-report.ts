import { formatQuantity, type Plan, pipeName, text, type UnitSystem } from "../core/index.ts";
import { table } from "./table.ts";

const when = { closed: "valves closed", running: "running", surge: "a valve closing" } as const;

/** The highest pressures against what pipe, hose and emitters stand: of those that stand the same, the highest. */
export function pressureReport({ watering: watered, rows }: Plan, units: UnitSystem): string {
  const all = watered?.watering?.highest ?? [];
  if (watered === null || all.length === 0) return "";
  const most = new Map<string, (typeof all)[number]>();
  for (const each of all) {
    const key = `${each.what} ${each.when} ${each.most_kpa}`;
    const before = most.get(key);
    if (before === undefined || each.pressure_kpa > before.pressure_kpa) most.set(key, each);
  }
  const highest = [...most.values()];
  const pressure = (kpa: number) => formatQuantity("pressure", kpa, units);
  const where = ({ what, lateral, pipe }: (typeof all)[number]) => {
    const size = watered.watering?.pipes[pipe]?.pipe;
    if (size !== undefined) return text(pipeName(size), units);
    const row = rows?.rows[watered.job.laterals.row[lateral] ?? -1]?.id;
    return row === undefined ? what : `${what}, row ${row}`;
  };
  return table([
    { head: "highest pressure", cells: highest.map(where) },
    { head: "when", cells: highest.map((each) => when[each.when]) },
    { head: "is", cells: highest.map(({ pressure_kpa }) => pressure(pressure_kpa)), isNumber: true },
    { head: "stands", cells: highest.map(({ most_kpa }) => pressure(most_kpa)), isNumber: true },
    { head: "", cells: highest.map(({ pressure_kpa, most_kpa }) => (pressure_kpa > most_kpa ? "too much" : "")) },
  ]);
}

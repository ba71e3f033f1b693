import { formatQuantity, type Plan, pressureOf_kpa, type UnitSystem } from "../core/index.ts";
import { rowsInWords } from "./rows-in-words.ts";
import { type Column, table } from "./table.ts";
import { wrapped } from "./wrapped.ts";

/** Whether there is enough water, in a sentence, and every set in a line; while the water is not known only what that means. */
export function setTable(plan: Plan, units: UnitSystem): string {
  const watered = plan.watering;
  const watering = watered?.watering ?? null;
  if (watered === null || watering === null) return "";
  if (watered.job.water.kind === "unknown") {
    return wrapped(
      'Water: not known yet, so whether there is enough cannot be said. State it in the file or with --set, such as --set water.kind=town --set "water.staticPressure=50 psi" --set "water.limitFlow=8 gal/min".',
      "",
    );
  }
  if (watering.sets.length === 0) return "Water: no sets can be worked out; what is missing is said below.\n";
  const { sets } = watering;
  const flow = (lps: number) => formatQuantity("flow", lps * 3600, units);
  const pressure = (head_m: number) => formatQuantity("pressure", pressureOf_kpa(head_m), units);
  const share = (ratio: number) => formatQuantity("ratio", ratio, units, 1);
  const { height_m } = watered.job.source;
  const idOf = (lateral: number) => plan.rows?.rows[watered.job.laterals.row[lateral] ?? -1]?.id ?? "";
  const column = (head: string, cell: (set: (typeof sets)[number]) => string): Column => {
    return { head, cells: sets.map(cell), isNumber: true };
  };
  const most = Math.max(...sets.map(({ flow_lps }) => flow_lps));
  const [shortest] = [...sets].sort((a, b) => a.spare_m - b.spare_m);
  const lacking =
    shortest === undefined || shortest.spare_m >= 0
      ? ""
      : `; row ${idOf(shortest.sparest)} lacks ${pressure(-shortest.spare_m)} at its tee`;
  return (
    wrapped(
      `Water: its flow and pressure are ${watering.isShort ? "not enough as it is" : "enough"}; ${
        sets.length === 1
          ? "all rows run together and take"
          : `${sets.length} sets of rows run one at a time, the largest takes`
      } ${flow(most)}${lacking}.`,
      "",
    ) +
    table([
      { head: "set", cells: sets.map(({ name }) => name) },
      { head: "rows", cells: sets.map(({ laterals }) => rowsInWords(laterals.map(idOf))) },
      column("flow", ({ flow_lps }) => flow(flow_lps)),
      column("at the gauge", ({ gauge_m }) => pressure(gauge_m - height_m)),
      column("at the main line", ({ source_m }) => pressure(source_m - height_m)),
      column("spare", ({ spare_m }) => pressure(spare_m)),
      column("at row", ({ sparest }) => idOf(sparest)),
      column("even", ({ evenness }) => share(evenness.emission_ratio)),
      column("to fill", ({ fill_h }) => formatQuantity("time", fill_h, units)),
      column("flushed at once", ({ flushable }) => String(flushable)),
    ])
  );
}

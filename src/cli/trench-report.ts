import { branchPlaces, formatQuantity, type Plan, type QuantityKind, type UnitSystem } from "../core/index.ts";
import { countOf } from "./count-of.ts";
import { type Column, table } from "./table.ts";
import { wrapped } from "./wrapped.ts";

/** Where the main line runs, a branch a line, and what its trench takes: earth, hours, low points. Pipe and fittings stand in the list of what to buy. Empty without a route. */
export function trenchReport(plan: Plan, units: UnitSystem): string {
  return `${mainLine(plan, units)}${branches(plan, units)}${earth(plan, units)}${lows(plan, units)}`;
}

function mainLine({ mainline, rows, project }: Plan, units: UnitSystem): string {
  const route = mainline?.route ?? null;
  if (mainline === null || route === null || rows === null) return "";
  const source = mainline.job?.sources[route.source]?.name ?? "the source";
  const tees = route.row.reduce((sum, row) => (row >= 0 ? sum + 1 : sum), 0);
  const lost = route.unreached.flatMap((row) => rows.rows[row]?.id ?? []);
  const ends = (["start", "end"] as const).flatMap((end) => {
    const count = mainline.waterEnd.filter((each, row) => each === end && !route.unreached.includes(row)).length;
    return count === 0 ? [] : [`${countOf(count, "row")} fed at the ${end}`];
  });
  const pinned = project.mainLine.pins.length === 0 ? [] : ["ends pinned as set"];
  return wrapped(
    `Main line: ${formatQuantity("length", route.length_m, units)} from ${source}; ${[
      countOf(tees, "row tee"),
      ...(route.crossings === 0 ? [] : [`${route.crossings} ${route.crossings === 1 ? "crossing" : "crossings"}`]),
      ...ends,
      ...pinned,
    ].join(", ")}${lost.length === 0 ? "" : `; no trench gets to ${lost.join(", ")}`}.`,
    "",
  );
}

function branches(plan: Plan, units: UnitSystem): string {
  const places = branchPlaces(plan);
  if (places.length === 0) return "";
  const length = (value_m: number) => formatQuantity("length", value_m, units, units === "us" ? 1 : 2);
  const counted = (kind: string): Column => ({
    head: kind === "tee" ? "row tees" : `${kind}s`,
    cells: places.map(({ marks }) => String(marks.filter((mark) => mark.kind === kind).length)),
    isNumber: true,
  });
  const isKnown = places.some(({ groundLength_m, length_m }) => Math.abs((groundLength_m ?? 0) - length_m) > 0.001);
  return table([
    { head: "branch", cells: places.map(({ name }) => name) },
    { head: "length", cells: places.map(({ length_m }) => length(length_m)), isNumber: true },
    ...(isKnown
      ? [
          {
            head: "on the ground",
            cells: places.map(({ groundLength_m }) => (groundLength_m === null ? "not known" : length(groundLength_m))),
            isNumber: true as const,
          },
        ]
      : []),
    counted("tee"),
    counted("bend"),
    { head: "to dig", cells: places.map(({ stations }) => depths(stations, units)), isNumber: true },
  ]);
}

function depths(stations: readonly { readonly depth_m: number }[], units: UnitSystem): string {
  const all_m = stations.map(({ depth_m }) => depth_m);
  const shown = (value_m: number) => formatQuantity("length", value_m, units, units === "us" ? 1 : 2);
  return range(shown(Math.min(...all_m)), shown(Math.max(...all_m)));
}

function earth({ trench, project }: Plan, units: UnitSystem): string {
  if (trench === null) return "";
  const { earth: moved } = trench;
  const shown = (kind: QuantityKind, value: number) => formatQuantity(kind, value, units);
  const between = (kind: QuantityKind, [least, most]: readonly [number, number]) =>
    range(formatQuantity(kind, least, units, 0), formatQuantity(kind, most, units, 0));
  const { tool, people } = project.trench;
  const who = tool === "hand" ? `by hand, ${people === 1 ? "1 person" : `${people} people`}` : `with a ${tool}`;
  return wrapped(
    `Trench: ${shown("length", moved.dug_m)} to dig with the leads to the rows, ${shown("length", moved.width_m)} wide, ` +
      `at most ${formatQuantity("length", moved.deepest_m, units, 2)} deep; ${shown("earth", moved.cut_m3)} as it lies, ` +
      `${shown("earth", moved.loose_m3)} loose, a heap ${formatQuantity("length", moved.heapHeight_m, units, 2)} high and ` +
      `${formatQuantity("length", moved.heapBase_m, units, 2)} wide beside it; ${shown("earth", moved.surplus_m3)} left over. ` +
      `${who.charAt(0).toUpperCase()}${who.slice(1)}: ${between("time", moved.hours_h)} to dig, lay and fill; open no more ` +
      `than ${between("length", moved.daily_m)} a day, dug, piped, tested and half filled before it rains.`,
    "",
  );
}

function lows({ trench, ground }: Plan, units: UnitSystem): string {
  if (trench === null) return "";
  const stations = "Every station with its depth: tautrow export FILE --of stations --as csv\n";
  if (ground?.elevation.kind === "flat" || trench.groundLength_m === null) {
    return `Low points are not known: there are no heights for all of the trench.\n${stations}`;
  }
  const told = trench.lows.map(({ branch, station_m, by_m, fitted }) => {
    const at = `${trench.branches[branch]?.name ?? "main"} at ${formatQuantity("length", station_m, units)}`;
    return `${at}, ${formatQuantity("length", by_m, units)} under its shoulder${fitted === 0 ? "" : fitted === 1 ? ", drain valve" : `, ${fitted} drain valves`}`;
  });
  return told.length === 0
    ? `No low point: the pipe drains to its ends.\n${stations}`
    : `${wrapped(`Low points, where water stands: ${told.join("; ")}.`, "")}${stations}`;
}

function range(least: string, most: string): string {
  return least === most ? most : `${least} to ${most}`;
}

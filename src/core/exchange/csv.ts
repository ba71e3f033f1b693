import type { Plan } from "../plan.ts";
import type { List } from "./lists/list.ts";
import { placed, postsOf, rowLabel, type Stake, stakesOf, vinesOf } from "./positions.ts";
import { millimetres, position } from "./rounding.ts";
import { isSketch } from "./sketch.ts";

export type Cell = string | number | null;

/**
 * Table of the rows (RFC 4180, CRLF), metres rounded to the millimetre, degrees to 8 decimals; wire has a column a purpose. On an outline
 * that was walked there is a last column, `sketch`.
 */
export function rowsCsv(plan: Plan): string {
  const purposes = [
    ...new Set((plan.trellis?.rows ?? []).flatMap((row) => Object.entries(row.wire_m).map(([name]) => name))),
  ];
  const heads = [
    "row",
    "block",
    "length_m",
    "groundLength_m",
    "startLongitude",
    "startLatitude",
    "endLongitude",
    "endLatitude",
    "waterEnd",
    "vines",
    "linePosts",
    ...purposes.map((purpose) => `${purpose}Wire_m`),
    "lateral_m",
    "emitters",
    ...(isSketch(plan) ? ["sketch"] : []),
  ];
  const lines = (plan.rows?.rows ?? []).map((row, index): readonly Cell[] => {
    const wire_m = new Map(Object.entries(plan.trellis?.rows[index]?.wire_m ?? {}));
    return [
      rowLabel(row),
      row.block,
      millimetres(row.length_m),
      millimetres(row.groundLength_m),
      ...position(placed(plan, row.start)),
      ...position(placed(plan, row.end)),
      plan.mainline?.waterEnd[index] ?? null,
      row.vines,
      row.linePosts,
      ...purposes.map((purpose) => millimetres(wire_m.get(purpose) ?? 0)),
      millimetres(plan.drip?.rows[index]?.lateral_m ?? 0),
      plan.drip?.rows[index]?.emitters ?? 0,
      ...(isSketch(plan) ? ["yes"] : []),
    ];
  });
  return csv([heads, ...lines]);
}

/** Every vine: name, row, station and place. */
export function vinesCsv(plan: Plan): string {
  return stations(vinesOf(plan), plan);
}

/** Every end post and line post. */
export function postsCsv(plan: Plan): string {
  return stations(postsOf(plan), plan);
}

/** Every training stake. */
export function stakesCsv(plan: Plan): string {
  return stations(stakesOf(plan), plan);
}

/** Lines of cells as RFC 4180 text: CRLF after every line, quoted where needed. */
export function csv(lines: readonly (readonly Cell[])[]): string {
  return lines.map((cells) => csvLine(cells.map(csvCell))).join("");
}

/** One line of cells that are text already. */
export function csvLine(cells: readonly string[]): string {
  return `${cells.join(",")}\r\n`;
}

/** A list with its heads as RFC 4180 text. */
export function listCsv({ heads, lines }: List): string {
  return csv([heads, ...lines]);
}

function stations(stakes: Iterable<Stake>, plan: Plan): string {
  const [head, cell] = isSketch(plan) ? [["sketch"], ["yes"]] : [[], []];
  const heads = ["name", "kind", "block", "row", "number", "station_m", "longitude", "latitude", ...head];
  const lines: (readonly Cell[])[] = [heads];
  for (const { id, kind, row, number, station_m, at } of stakes) {
    lines.push([id, kind, row.block, rowLabel(row), number, millimetres(station_m), ...position(at), ...cell]);
  }
  return csv(lines);
}

/**
 * A cell as it stands in a line. Office programs run a text cell that starts like a formula; an apostrophe in front keeps it text. Numbers are
 * never touched.
 */
export function csvCell(cell: Cell): string {
  if (cell === null) return "";
  if (typeof cell === "number") return String(cell);
  const safe = /^[=+\-@\t\r]/.test(cell) ? `'${cell}` : cell;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

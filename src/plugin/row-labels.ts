import type { Feature, Point } from "geojson";
import type { Row, Rows } from "../core/rows/rows.ts";
import type { Placing } from "./placing.ts";

export type Anchor = "top" | "top-right" | "right" | "bottom-right" | "bottom" | "bottom-left" | "left" | "top-left";

/** A label at the start of every row, with the side of the text that faces the row. */
export function rowLabels(rows: Rows, placing: Placing): Feature<Point, { label: string; anchor: Anchor }>[] {
  return rows.rows.map((row) => ({
    type: "Feature",
    properties: { label: rowLabel(row), anchor: anchorToward(direction(row)) },
    geometry: { type: "Point", coordinates: placing.lngLat(row.start[0], row.start[1]) },
  }));
}

/** The row's number as painted on its post: the id without its block. */
export function rowLabel(row: Pick<Row, "id" | "block">): string {
  const prefix = `${row.block}-`;
  return row.id.startsWith(prefix) ? row.id.slice(prefix.length) : row.id;
}

/** Unit vector from the start to the end of a row; northward for a row of no length. */
function direction(row: Row): readonly [dx: number, dy: number] {
  const [dx, dy] = [row.end[0] - row.start[0], row.end[1] - row.start[1]];
  const length_m = Math.hypot(dx, dy);
  return length_m === 0 ? [0, 1] : [dx / length_m, dy / length_m];
}

const clockwiseFromNorth: readonly Anchor[] = [
  "top",
  "top-right",
  "right",
  "bottom-right",
  "bottom",
  "bottom-left",
  "left",
  "top-left",
];

/** Of eight sides, the one of a text placed before the start that faces along `direction`. */
export function anchorToward([dx, dy]: readonly [dx: number, dy: number]): Anchor {
  const eighth = Math.round((Math.atan2(dx, dy) / (2 * Math.PI)) * 8 + 8) % 8;
  return clockwiseFromNorth[eighth] ?? "top";
}

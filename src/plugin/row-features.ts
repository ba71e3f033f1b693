import type { Feature, LineString, MultiLineString, MultiPoint, Point } from "geojson";
import type { Positions, Row, Rows } from "../core/rows/rows.ts";
import { tickShare } from "./live-buffers.ts";
import type { Placing } from "./placing.ts";

export type Anchor = "top" | "top-right" | "right" | "bottom-right" | "bottom" | "bottom-left" | "left" | "top-left";

/** Row lines, one feature a row, its id the row's. */
export function rowLines(rows: Rows, placing: Placing): Feature<LineString>[] {
  return rows.rows.map((row) => ({
    type: "Feature",
    properties: { kind: "row", id: row.id, block: row.block },
    geometry: {
      type: "LineString",
      coordinates: [placing.lngLat(row.start[0], row.start[1]), placing.lngLat(row.end[0], row.end[1])],
    },
  }));
}

/** The small ticks across both ends of every row, as one feature; empty when there is no row. */
export function rowTicks(rows: Rows, placing: Placing): Feature<MultiLineString>[] {
  const spacing = new Map(rows.blocks.map((block) => [block.block, block.rowSpacing_m]));
  const coordinates = rows.rows.flatMap((row) => {
    const [dx, dy] = direction(row);
    const half_m = (spacing.get(row.block) ?? 0) * tickShare;
    return [row.start, row.end].map((at) => [
      placing.lngLat(at[0] - dy * half_m, at[1] + dx * half_m),
      placing.lngLat(at[0] + dy * half_m, at[1] - dx * half_m),
    ]);
  });
  if (coordinates.length === 0) return [];
  return [{ type: "Feature", properties: { kind: "ticks" }, geometry: { type: "MultiLineString", coordinates } }];
}

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

/** All positions of a row as one feature; rows with none are left out, because the map refuses an empty geometry. */
export function pointsByRow(positions: Positions, placing: Placing): Feature<MultiPoint>[] {
  const features: Feature<MultiPoint>[] = [];
  for (let row = 0; row + 1 < positions.offsets.length; row++) {
    const coordinates = [];
    for (let i = positions.offsets[row] ?? 0; i < (positions.offsets[row + 1] ?? 0); i++) {
      coordinates.push(placing.lngLat(positions.xy[2 * i] ?? 0, positions.xy[2 * i + 1] ?? 0));
    }
    if (coordinates.length > 0)
      features.push({ type: "Feature", properties: {}, geometry: { type: "MultiPoint", coordinates } });
  }
  return features;
}

/** Both end posts of every row. */
export function endPosts(rows: Rows, placing: Placing): Feature<MultiPoint>[] {
  return rows.rows.map((row) => ({
    type: "Feature",
    properties: {},
    geometry: {
      type: "MultiPoint",
      coordinates: [placing.lngLat(row.start[0], row.start[1]), placing.lngLat(row.end[0], row.end[1])],
    },
  }));
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

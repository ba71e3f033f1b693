import type { Plan } from "../../plan.ts";
import { type PlanePoint, planePoint } from "../../plane/coordinate.ts";
import type { Positions, Row } from "../../rows/rows.ts";
import { rowLabel } from "../positions.ts";
import type { Layer, LayerFeature } from "./layer.ts";
import { type LayerJob, placeAt, rowsOut } from "./layer-job.ts";
import { pointColumns, pointValues } from "./point-columns.ts";

/** Every vine with its row, its number in the row and its station. */
export function vinesLayer(job: LayerJob): Layer {
  return alongRows(job, "vines", "vine", "V", job.plan.rows?.vines);
}

/** Every training stake. */
export function stakesLayer(job: LayerJob): Layer {
  return alongRows(job, "stakes", "stake", "S", job.plan.rows?.stakes);
}

/** Every post, row by row from the end post at the start (number 1) to the one at the end; the kind is the `role`. */
export function postsLayer(job: LayerJob): Layer {
  const { plan } = job;
  const rows = rowsOut(job);
  return {
    kind: "posts",
    shape: "point",
    columns: pointColumns(job),
    count: rows.reduce((sum, [, row]) => sum + row.linePosts + 2, 0),
    *features(): Generator<LayerFeature> {
      const feature = standing(job);
      for (const [index, row] of rows) {
        yield feature("post", "end-post", "E", row, 1, 0, row.start);
        for (const { number, station_m, at } of ofRow(plan.rows?.linePosts, index)) {
          yield feature("post", "line-post", "P", row, number + 1, station_m, at);
        }
        yield feature("post", "end-post", "E", row, row.linePosts + 2, row.length_m, row.end);
      }
    },
  };
}

function alongRows(
  job: LayerJob,
  kind: "vines" | "stakes",
  one: string,
  code: string,
  positions: Positions | undefined,
): Layer {
  const rows = rowsOut(job);
  return {
    kind,
    shape: "point",
    columns: pointColumns(job),
    count: rows.reduce((sum, [, row]) => sum + row[kind], 0),
    *features(): Generator<LayerFeature> {
      const feature = standing(job);
      for (const [index, row] of rows) {
        for (const { number, station_m, at } of ofRow(positions, index)) {
          yield feature(one, one, code, row, number, station_m, at);
        }
      }
    },
  };
}

/** A point along a row as a feature. */
export function standing(job: LayerJob) {
  const values = pointValues(job);
  return (
    called: string,
    kind: string,
    code: string,
    row: Row,
    number: number,
    station_m: number,
    at: PlanePoint,
  ): LayerFeature => {
    const place = placeAt(job, at);
    return {
      id: `${called}-${row.id}-${number}`,
      parts: { kind, code, block: row.block, row: rowLabel(row), number, own: null },
      geometry: { shape: "point", place },
      values: values(kind, row, number, station_m, place.at),
    };
  };
}

function* ofRow(positions: Positions | undefined, index: number) {
  if (positions === undefined) return;
  const first = positions.offsets[index] ?? 0;
  const behind = positions.offsets[index + 1] ?? first;
  for (let i = first; i < behind; i++) {
    yield {
      number: i - first + 1,
      station_m: positions.station_m[i] ?? 0,
      at: planePoint(positions.xy[2 * i] ?? 0, positions.xy[2 * i + 1] ?? 0),
    };
  }
}

/** The blocks of a plan by their id. */
export function blocksById({ project }: Plan) {
  return new Map(project.blocks.map((block) => [block.id, block]));
}

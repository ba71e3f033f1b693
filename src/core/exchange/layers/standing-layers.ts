import type { Plan } from "../../plan.ts";
import { type PlanePoint, planePoint } from "../../plane/coordinate.ts";
import type { Positions, Row } from "../../rows/rows.ts";
import { rowLabel } from "../positions.ts";
import type { Layer, LayerFeature, Named } from "./layer.ts";
import { type LayerJob, placeAt, rowsOut } from "./layer-job.ts";
import { pointColumns, pointValues } from "./point-columns.ts";

/** A kind of thing along rows: what its ids begin with, what it is, and its letter. */
export interface Standing {
  readonly called: string;
  readonly kind: string;
  readonly code: string;
}

const vine: Standing = { called: "vine", kind: "vine", code: "V" };
const stake: Standing = { called: "stake", kind: "stake", code: "S" };
const endPost: Standing = { called: "post", kind: "end-post", code: "E" };
const linePost: Standing = { called: "post", kind: "line-post", code: "P" };

/** Every vine with its row, its number in the row and its station. */
export function vinesLayer(job: LayerJob): Layer {
  return alongRows(job, "vines", vine, job.plan.rows?.vines);
}

/** Every training stake. */
export function stakesLayer(job: LayerJob): Layer {
  return alongRows(job, "stakes", stake, job.plan.rows?.stakes);
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
        const label = rowLabel(row);
        yield feature(endPost, row, label, 1, 0, row.start);
        for (const { number, station_m, at } of ofRow(plan.rows?.linePosts, index)) {
          yield feature(linePost, row, label, number + 1, station_m, at);
        }
        yield feature(endPost, row, label, row.linePosts + 2, row.length_m, row.end);
      }
    },
    *named(): Generator<Named> {
      for (const [, row] of rows) {
        const label = rowLabel(row);
        const last = row.linePosts + 2;
        for (let number = 1; number <= last; number++) {
          yield namedAlong(number === 1 || number === last ? endPost : linePost, row, label, number);
        }
      }
    },
  };
}

function alongRows(job: LayerJob, kind: "vines" | "stakes", what: Standing, positions: Positions | undefined): Layer {
  const rows = rowsOut(job);
  return {
    kind,
    shape: "point",
    columns: pointColumns(job),
    count: rows.reduce((sum, [, row]) => sum + row[kind], 0),
    *features(): Generator<LayerFeature> {
      const feature = standing(job);
      for (const [index, row] of rows) {
        const label = rowLabel(row);
        for (const { number, station_m, at } of ofRow(positions, index)) {
          yield feature(what, row, label, number, station_m, at);
        }
      }
    },
    *named(): Generator<Named> {
      for (const [, row] of rows) {
        const label = rowLabel(row);
        for (let number = 1; number <= row[kind]; number++) yield namedAlong(what, row, label, number);
      }
    },
  };
}

/** A thing along a row by its name; `label` is the row's number without its block. */
export function namedAlong({ called, kind, code }: Standing, row: Row, label: string, number: number): Named {
  return {
    id: `${called}-${row.id}-${number}`,
    parts: { kind, code, block: row.block, row: label, number, own: null },
  };
}

/** A point along a row as a feature. */
export function standing(job: LayerJob) {
  const values = pointValues(job);
  return (what: Standing, row: Row, label: string, number: number, station_m: number, at: PlanePoint): LayerFeature => {
    const { id, parts } = namedAlong(what, row, label, number);
    const place = placeAt(job, at);
    return {
      id,
      parts,
      geometry: { shape: "point", place },
      values: values(what.kind, row, label, number, station_m, place.at),
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

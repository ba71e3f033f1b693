import { outward } from "../../mainline/outward.ts";
import { reach_m } from "../../mainline/route-job.ts";
import { planePoint } from "../../plane/coordinate.ts";
import { rowLabel } from "../positions.ts";
import type { Layer, LayerFeature, LayerKind, Named } from "./layer.ts";
import { type LayerJob, rowsOut } from "./layer-job.ts";
import { pointColumns } from "./point-columns.ts";
import { blocksById, namedAlong, type Standing, standing } from "./standing-layers.ts";

/** The anchor at each end of every row that has anchors; stations are below 0 at the start. Number 1 is at the start, 2 at the end. */
export function anchorsLayer(job: LayerJob): Layer {
  const anchor = { called: "anchor", kind: "anchor", code: "A" };
  return beyondEnds(job, "anchors", anchor, (anchor_m) => (anchor_m > 0 ? anchor_m : null));
}

/** A peg on the line of every row, beyond the anchor at both ends: the auger eats the mark of the post, the peg stays. */
export function pegsLayer(job: LayerJob): Layer {
  const peg = { called: "offset-peg", kind: "offset-peg", code: "O" };
  return beyondEnds(job, "pegs", peg, (anchor_m) => anchor_m + job.pegBeyond_m);
}

function beyondEnds(
  job: LayerJob,
  kind: LayerKind,
  what: Standing,
  beyond_m: (anchor_m: number) => number | null,
): Layer {
  const blocks = blocksById(job.plan);
  const rows = rowsOut(job).flatMap(([, row]) => {
    const block = blocks.get(row.block);
    const out_m = block === undefined ? null : beyond_m(reach_m(block));
    return out_m === null ? [] : [{ row, label: rowLabel(row), out_m }];
  });
  return {
    kind,
    shape: "point",
    columns: pointColumns(job),
    count: 2 * rows.length,
    *features(): Generator<LayerFeature> {
      const feature = standing(job);
      for (const { row, label, out_m } of rows) {
        for (const [number, end, station_m] of [
          [1, "start", -out_m],
          [2, "end", row.length_m + out_m],
        ] as const) {
          const [post, [x, y]] = outward(row, end);
          const at = planePoint(post[0] + out_m * x, post[1] + out_m * y);
          yield feature(what, row, label, number, station_m, at);
        }
      }
    },
    *named(): Generator<Named> {
      for (const { row, label } of rows) {
        yield namedAlong(what, row, label, 1);
        yield namedAlong(what, row, label, 2);
      }
    },
  };
}

import { rowLabel } from "../positions.ts";
import { millimetres } from "../rounding.ts";
import { isSketch } from "../sketch.ts";
import type { Column, Layer, LayerFeature } from "./layer.ts";
import { type LayerJob, placeAt, rowsOut } from "./layer-job.ts";
import { named } from "./named.ts";
import { sketchColumns } from "./point-columns.ts";

/** Row lines, start to end, with lengths and counts; a column a purpose of wire. */
export function rowsLayer(job: LayerJob): Layer {
  const { plan } = job;
  const rows = rowsOut(job);
  const purposes = [...new Set((plan.trellis?.rows ?? []).flatMap((row) => Object.keys(row.wire_m)))];
  const length = (name: string): Column => ({ name, type: "number", decimals: 3 });
  const columns: readonly Column[] = [
    { name: "role", type: "text" },
    { name: "block", type: "text" },
    { name: "row", type: "text" },
    length("length_m"),
    length("groundLength_m"),
    { name: "waterEnd", type: "text" },
    { name: "vines", type: "whole" },
    { name: "linePosts", type: "whole" },
    length("lateral_m"),
    { name: "emitters", type: "whole" },
    ...purposes.map((purpose) => length(`${purpose}Wire_m`)),
    ...sketchColumns(job),
  ];
  return named({
    kind: "rows",
    shape: "line",
    columns,
    count: rows.length,
    *features(): Generator<LayerFeature> {
      for (const [index, row] of rows) {
        const wire_m = new Map(Object.entries(plan.trellis?.rows[index]?.wire_m ?? {}));
        const drip = plan.drip?.rows[index];
        yield {
          id: `row-${row.id}`,
          parts: { kind: "row", code: "", block: row.block, row: rowLabel(row), number: null, own: null },
          geometry: { shape: "line", places: [placeAt(job, row.start), placeAt(job, row.end)] },
          values: [
            "row",
            row.block,
            rowLabel(row),
            millimetres(row.length_m),
            millimetres(row.groundLength_m),
            plan.mainline?.waterEnd[index] ?? null,
            row.vines,
            row.linePosts,
            millimetres(drip?.lateral_m ?? 0),
            drip?.emitters ?? 0,
            ...purposes.map((purpose) => millimetres(wire_m.get(purpose) ?? 0)),
            ...(isSketch(plan) ? [true] : []),
          ],
        };
      }
    },
  });
}

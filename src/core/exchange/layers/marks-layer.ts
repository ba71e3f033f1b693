import type { Layer, LayerFeature } from "./layer.ts";
import { type LayerJob, placeAt } from "./layer-job.ts";
import { named } from "./named.ts";
import { ownKey } from "./own-key.ts";
import { baselineColumns, sketchColumns, tailValues } from "./point-columns.ts";

/** The permanent points that tape and rover both start from. */
export function marksLayer(job: LayerJob): Layer {
  const { ground, project } = job.plan;
  const marks = ground === null ? [] : project.marks;
  return named({
    kind: "marks",
    shape: "point",
    columns: [{ name: "role", type: "text" }, ...baselineColumns(job), ...sketchColumns(job)],
    count: marks.length,
    *features(): Generator<LayerFeature> {
      const tail = tailValues(job);
      for (const [i, { key, name, at }] of marks.entries()) {
        const height_m = ground === null ? null : placeAt(job, ground.frame.toPlane(at)).height_m;
        yield {
          id: `mark-${key}`,
          parts: {
            kind: "mark",
            code: "M",
            block: null,
            row: null,
            number: i + 1,
            own: name ?? ownKey(key) ?? `mark ${i + 1}`,
          },
          geometry: { shape: "point", place: { at, height_m } },
          values: ["mark", ...tail(at)],
        };
      }
    },
  });
}

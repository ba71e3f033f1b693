import type { Plan } from "../../plan.ts";
import { planePoint } from "../../plane/coordinate.ts";
import type { Ring } from "../../project/project.ts";
import { rounded } from "../rounding.ts";
import { isSketch } from "../sketch.ts";
import type { Column, Layer, LayerFeature, Place } from "./layer.ts";
import { type LayerJob, placeAt } from "./layer-job.ts";
import { named } from "./named.ts";
import { ownKey } from "./own-key.ts";
import { sketchColumns } from "./point-columns.ts";

/** The outlines of the parcels as they are planned with. */
export function parcelsLayer(job: LayerJob): Layer {
  const { ground, project } = job.plan;
  const parcels = ground === null ? [] : project.parcels;
  return named({
    kind: "parcels",
    shape: "area",
    columns: [{ name: "role", type: "text" }, ...sketchColumns(job)],
    count: parcels.length,
    *features(): Generator<LayerFeature> {
      for (const [i, { key, polygons }] of parcels.entries()) {
        yield {
          id: `parcel-${key}`,
          parts: {
            kind: "parcel",
            code: "G",
            block: null,
            row: null,
            number: i + 1,
            own: ownKey(key) ?? `parcel ${i + 1}`,
          },
          geometry: {
            shape: "area",
            polygons: polygons.map((rings) => rings.map((ring) => placesOf(job, ring))),
          },
          values: ["parcel", ...(isSketch(job.plan) ? [true] : [])],
        };
      }
    },
  });
}

function placesOf(job: LayerJob, ring: Ring): readonly Place[] {
  const { frame } = groundOf(job.plan);
  return ring.map((at) => ({ at, height_m: placeAt(job, frame.toPlane(at)).height_m }));
}

/** The ground of each block: the area drawn for it, or what other blocks leave of the parcels. */
export function blocksLayer(job: LayerJob): Layer {
  const { ground, rows } = job.plan;
  const blocks = ground?.blocks ?? [];
  const columns: readonly Column[] = [
    { name: "role", type: "text" },
    { name: "block", type: "text" },
    { name: "area_m2", type: "number", decimals: 1 },
    { name: "rows", type: "whole" },
    { name: "bearing_deg", type: "number", decimals: 4 },
    { name: "rowSpacing_m", type: "number", decimals: 3 },
    ...sketchColumns(job),
  ];
  return named({
    kind: "blocks",
    shape: "area",
    columns,
    count: blocks.length,
    *features(): Generator<LayerFeature> {
      for (const { block, area_m2, outlines, areas, isDrawn } of blocks) {
        const laid = rows?.blocks.find((each) => each.block === block);
        yield {
          id: `block-${block}`,
          parts: { kind: "block", code: "B", block, row: null, number: null, own: block },
          geometry: {
            shape: "area",
            polygons: (isDrawn ? areas : outlines).map(({ rings }) => ringsOf(job, rings.xy, rings.ringStart)),
          },
          values: [
            "block",
            block,
            rounded(area_m2, 1),
            laid?.count ?? 0,
            laid === undefined ? null : rounded(laid.bearing_deg, 4),
            laid === undefined ? null : rounded(laid.rowSpacing_m, 3),
            ...(isSketch(job.plan) ? [true] : []),
          ],
        };
      }
    },
  });
}

function ringsOf(job: LayerJob, xy: Float64Array, ringStart: Int32Array): readonly (readonly Place[])[] {
  return Array.from(ringStart.subarray(0, -1), (first, r) =>
    Array.from({ length: (ringStart[r + 1] ?? first) - first }, (_, i) => {
      const at = 2 * (first + i);
      return placeAt(job, planePoint(xy[at] ?? 0, xy[at + 1] ?? 0));
    }),
  );
}

function groundOf({ ground }: Plan) {
  if (ground === null) throw new Error("only a plan with a ground has outlines");
  return ground;
}

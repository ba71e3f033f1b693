import type { BlockGround } from "../../ground/ground.ts";
import type { Plan } from "../../plan.ts";
import { lonLat, planePoint } from "../../plane/coordinate.ts";
import { type RingSet, sharedLand } from "../../plane/overlay.ts";
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

/** Outlines across the antimeridian are kept with longitudes that run on; they leave within ±180. */
function placesOf(job: LayerJob, ring: Ring): readonly Place[] {
  const { frame } = groundOf(job.plan);
  return ring.map((at) => ({
    at: Math.abs(at[0]) > 180 ? lonLat(at[0] - 360 * Math.sign(at[0]), at[1]) : at,
    height_m: placeAt(job, frame.toPlane(at)).height_m,
  }));
}

/** The ground of each block: what the area drawn for it has of the parcels, or what other blocks leave of them. */
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
  return {
    kind: "blocks",
    shape: "area",
    columns,
    count: blocks.length,
    *features(): Generator<LayerFeature> {
      for (const each of blocks) {
        const { block, area_m2 } = each;
        const laid = rows?.blocks.find((one) => one.block === block);
        yield {
          ...namedBlock(each),
          geometry: {
            shape: "area",
            polygons: landOf(each, blocks).map((rings) => rings.map((ring) => placesOn(job, ring))),
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
    *named() {
      for (const each of blocks) yield namedBlock(each);
    },
  };
}

function namedBlock({ block }: BlockGround) {
  return { id: `block-${block}`, parts: { kind: "block", code: "B", block, row: null, number: null, own: block } };
}

/** Polygons of a block's ground, each with its outer ring first; x and y in turn, plane metres. */
function landOf(block: BlockGround, blocks: readonly BlockGround[]): readonly (readonly Float64Array[])[] {
  const outlines = block.outlines.map(({ rings }) => rings);
  const own = block.isDrawn ? block.areas.map(({ rings }) => rings) : null;
  const others =
    block.isDrawn || block.areas.length === 0
      ? []
      : blocks.filter(({ isDrawn }) => isDrawn).flatMap(({ areas }) => areas.map(({ rings }) => rings));
  const [only] = outlines;
  // Corners of a single parcel that is one block stay as they are, to the last digit.
  if (outlines.length === 1 && only !== undefined && own === null && others.length === 0) return [ringsOf(only)];
  return sharedLand(outlines, own, others).polygons;
}

function ringsOf({ xy, ringStart }: RingSet): readonly Float64Array[] {
  return Array.from(ringStart.subarray(0, -1), (first, r) => xy.subarray(2 * first, 2 * (ringStart[r + 1] ?? first)));
}

function placesOn(job: LayerJob, ring: Float64Array): readonly Place[] {
  return Array.from({ length: ring.length / 2 }, (_, i) =>
    placeAt(job, planePoint(ring[2 * i] ?? 0, ring[2 * i + 1] ?? 0)),
  );
}

function groundOf({ ground }: Plan) {
  if (ground === null) throw new Error("only a plan with a ground has outlines");
  return ground;
}

import { plantingArea } from "../../../src/core/plane/overlay.ts";
import type { Geos } from "../../support/geos.ts";
import { createRandomParcel, type TestParcel, toPoints } from "../../support/parcels.ts";
import type { Verdict } from "./verdict.ts";

/** The kernel's arcs lie up to 15 m · (1 − cos(π/800)) = 0.12 mm inside the true ones, ours within 1 mm on both sides, evened out. */
export const overlayTolerance_mPerMetre = 0.000_15;

const piecesPerQuarter = 200;

/** Planting area of one random parcel (setbacks 0 to 15 m) against the independent kernel: the difference per metre of its boundary. */
export function overlayAgainstKernel(geos: Geos, seed: number): Verdict {
  const parcel = createRandomParcel(seed);
  const ours = plantingArea({ outlines: [parcel.rings], closed: [], segments: parcel.bands });
  const theirs = kernelArea(geos, parcel);
  const worst = Math.abs(ours.area_m2 - theirs.area_m2) / Math.max(theirs.boundary_m, 1);
  const faults =
    worst <= overlayTolerance_mPerMetre ? [] : [`seed ${seed}: ${ours.area_m2} m2 here, ${theirs.area_m2} m2 there`];
  return { faults, worst };
}

/** Parcel less a finely rounded buffer of each edge, taken off one after another. */
function kernelArea(
  geos: Geos,
  { rings, bands }: TestParcel,
): { readonly area_m2: number; readonly boundary_m: number } {
  let land = geos.polygon(toPoints(rings));
  bands.distance_m.forEach((distance, i) => {
    const [x1 = 0, y1 = 0, x2 = 0, y2 = 0] = bands.xy.subarray(4 * i, 4 * i + 4);
    const line = geos.lines([
      [
        [x1, y1],
        [x2, y2],
      ],
    ]);
    const band = geos.buffer(line, distance, piecesPerQuarter);
    const left = geos.difference(land, band);
    geos.free(line, band, land);
    land = left;
  });
  const measured = { area_m2: geos.area(land), boundary_m: geos.length(land) };
  geos.free(land);
  return measured;
}

import { type LonLat, lonLat, type PlanePoint, planePoint } from "../../src/core/plane/coordinate.ts";
import { createFrame, type Frame } from "../../src/core/plane/frame.ts";
import { geodesic, geodesicArea } from "../support/geodesic.ts";
import { between, createRandom, type Random } from "../support/random.ts";

/** Worst differences between the plane and the ellipsoid, over random rows and parcels whose middle lies `away_m` from the origin. */
export interface FrameError {
  /** Millimetres in a kilometre of row: parts per million. */
  readonly length_mmPerKm: number;
  /** True azimuth from the plane (grid bearing + convergence) against the geodesic. */
  readonly azimuth_deg: number;
  readonly area_ppm: number;
}

export const accuracyLatitudes_deg = [0, 38, -38, 60, -60, 75, -75] as const;

const rows = 200;
const parcels = 20;
const corners = 40;

export function frameError(origin: LonLat, away_m: number, seed: number): FrameError {
  const frame = createFrame(origin);
  const random = createRandom(seed);
  let [length_mmPerKm, azimuth_deg, area_ppm] = [0, 0, 0];
  for (let i = 0; i < rows; i++) {
    const row = rowError(frame, placeAround(random, away_m), random);
    length_mmPerKm = Math.max(length_mmPerKm, row.length_mmPerKm);
    azimuth_deg = Math.max(azimuth_deg, row.azimuth_deg);
  }
  for (let i = 0; i < parcels; i++) {
    area_ppm = Math.max(area_ppm, areaError_ppm(frame, placeAround(random, away_m), random));
  }
  return { length_mmPerKm, azimuth_deg, area_ppm };
}

function placeAround(random: Random, away_m: number): PlanePoint {
  const angle = between(random, 0, 2 * Math.PI);
  return planePoint(away_m * Math.cos(angle), away_m * Math.sin(angle));
}

/** A row of 50 to 1000 m with its middle at a place. */
function rowError(frame: Frame, middle: PlanePoint, random: Random) {
  const planeLength_m = between(random, 50, 1000);
  const bearing = between(random, 0, 2 * Math.PI);
  const [halfX, halfY] = [(planeLength_m / 2) * Math.sin(bearing), (planeLength_m / 2) * Math.cos(bearing)];
  const start = planePoint(middle[0] - halfX, middle[1] - halfY);
  const end = planePoint(middle[0] + halfX, middle[1] + halfY);
  const { length_m, azimuth_deg } = geodesic(frame.toLonLat(start), frame.toLonLat(end));
  const true_deg = (bearing * 180) / Math.PI + frame.convergence_deg(start);
  return {
    length_mmPerKm: (Math.abs(planeLength_m - length_m) / length_m) * 1e6,
    azimuth_deg: Math.abs(((true_deg - azimuth_deg + 900) % 360) - 180),
  };
}

/** A star-shaped parcel of 1 to 60 ha, its shape exact in lon/lat, its area by plane and by geodesics. */
function areaError_ppm(frame: Frame, middle: PlanePoint, random: Random): number {
  const radius_m = between(random, 60, 450);
  const ring = Array.from({ length: corners }, (_, i) => {
    const angle = (2 * Math.PI * i) / corners;
    const corner_m = radius_m * between(random, 0.8, 1);
    return frame.toLonLat(planePoint(middle[0] + corner_m * Math.cos(angle), middle[1] + corner_m * Math.sin(angle)));
  });
  const flat = ring.map((at) => frame.toPlane(at));
  const [x0, y0] = flat[0] ?? [0, 0];
  const plane_m2 = flat.reduce((sum, [x1, y1], i) => {
    const [x2, y2] = flat[(i + 1) % corners] ?? [0, 0];
    return sum + ((x1 - x0) * (y2 - y0) - (x2 - x0) * (y1 - y0)) / 2;
  }, 0);
  const ellipsoid_m2 = geodesicArea(ring);
  return (Math.abs(plane_m2 - ellipsoid_m2) / ellipsoid_m2) * 1e6;
}

/** Worst of a distance over all latitudes, each at a few longitudes, the antimeridian among them. */
export function worstFrameError(away_m: number): FrameError {
  const errors = accuracyLatitudes_deg.flatMap((lat) =>
    [6.1, -122.4, 179.9999].map((lon, i) => frameError(lonLat(lon, lat), away_m, 1000 + i)),
  );
  return {
    length_mmPerKm: Math.max(...errors.map((error) => error.length_mmPerKm)),
    azimuth_deg: Math.max(...errors.map((error) => error.azimuth_deg)),
    area_ppm: Math.max(...errors.map((error) => error.area_ppm)),
  };
}

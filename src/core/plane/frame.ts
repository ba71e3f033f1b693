import proj4 from "proj4";
import { type LonLat, lonLat, type PlanePoint, planePoint } from "./coordinate.ts";

/**
 * The local plane of a project: transverse Mercator, scale 1 at the origin, WGS84, metres.
 * Rows differ from their length on the ellipsoid by 0.013 mm per km where they lie 1 km from the origin, 0.31 at 5 km and 1.2 at 10 km
 * (tests/bench/accuracy.ts measures it).
 */
export interface Frame {
  readonly origin: LonLat;
  toPlane(at: LonLat): PlanePoint;
  /** Longitude comes back within ±180. */
  toLonLat(at: PlanePoint): LonLat;
  /** Grid convergence at a place: grid bearing = true bearing - convergence. */
  convergence_deg(at: PlanePoint): number;
}

const radians = Math.PI / 180;

/** Furthest from the origin that the frame is used, so that lengths stay within 1.3 mm per km: a project may be twice this wide. */
export const frameReach_m = 10_000;

/** The frame around an origin; make it once per project, it costs more than a thousand conversions. */
export function createFrame(origin: LonLat): Frame {
  const projection = proj4.Proj(`+proj=tmerc +lat_0=${origin[1]} +lon_0=${origin[0]} +k=1 +ellps=WGS84 +units=m`);
  const toLonLat = (at: PlanePoint): LonLat => {
    const { x, y } = projection.inverse({ x: at[0], y: at[1] });
    return lonLat(x / radians, y / radians);
  };
  return {
    origin,
    toPlane: (at) => {
      const { x, y } = projection.forward({ x: at[0] * radians, y: at[1] * radians });
      return planePoint(x, y);
    },
    toLonLat,
    // Snyder 1987 (USGS PP 1395), spherical form of the convergence: off by less than 1e-7 degree within the frame's reach.
    convergence_deg: (at) => {
      const place = toLonLat(at);
      const east = ((place[0] - origin[0] + 540) % 360) - 180;
      return Math.atan(Math.tan(east * radians) * Math.sin(place[1] * radians)) / radians;
    },
  };
}

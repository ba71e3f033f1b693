import { lonLat, planePoint } from "../plane/coordinate.ts";
import type { Frame } from "../plane/frame.ts";
import type { CoordinateSystem } from "./coordinate-system.ts";
import { unitLength_m } from "./unit-length.ts";

/** The plane of a project as a system: x east and y north from the frame's origin, in the unit asked for. */
export function localSystem(frame: Frame, unit: "m" | "ft" | "us-ft"): CoordinateSystem {
  const { origin } = frame;
  const unit_m = unitLength_m[unit];
  return {
    code: null,
    datum: "WGS 84",
    name: `local plane of the project, origin at longitude ${origin[0]}, latitude ${origin[1]}`,
    definition: `+proj=tmerc +lat_0=${origin[1]} +lon_0=${origin[0]} +k=1 +x_0=0 +y_0=0 +datum=WGS84 +units=${unit} +no_defs`,
    kind: "local",
    unit,
    fromLonLat: (lon_deg, lat_deg) => {
      const [x, y] = frame.toPlane(lonLat(lon_deg, lat_deg));
      return [x / unit_m, y / unit_m];
    },
    toLonLat: (x, y) => {
      const [lon_deg, lat_deg] = frame.toLonLat(planePoint(x * unit_m, y * unit_m));
      return [lon_deg, lat_deg];
    },
  };
}

import type { Elevation } from "../../core/ground/elevation.ts";
import type { PlaneBox } from "../../core/ground/plane-box.ts";
import type { LonLat } from "../../core/plane/coordinate.ts";
import type { Frame } from "../../core/plane/frame.ts";

/** The relief reaches so far past the parcels, as a share of their longer side. */
const around_ratio = 0.5;

/** The box the relief is drawn in: around the parcels, as far as heights may be known; null where that is nowhere. */
export function reliefBox(elevation: Elevation, corners: readonly LonLat[], frame: Frame): PlaneBox | null {
  const parcels = boxOf(corners.map((corner) => frame.toPlane(corner)));
  if (parcels === null) return null;
  const around_m = around_ratio * Math.max(parcels.east_m - parcels.west_m, parcels.north_m - parcels.south_m);
  const known = knownBox(elevation);
  const box = {
    west_m: Math.max(parcels.west_m - around_m, known?.west_m ?? -Infinity),
    south_m: Math.max(parcels.south_m - around_m, known?.south_m ?? -Infinity),
    east_m: Math.min(parcels.east_m + around_m, known?.east_m ?? Infinity),
    north_m: Math.min(parcels.north_m + around_m, known?.north_m ?? Infinity),
  };
  return box.west_m < box.east_m && box.south_m < box.north_m ? box : null;
}

/** Box around all known heights; null where they go on for ever. */
function knownBox(elevation: Elevation): PlaneBox | null {
  switch (elevation.kind) {
    case "flat":
    case "plane":
      return null;
    case "spot-heights": {
      const { xy } = elevation;
      return boxOf(Array.from({ length: xy.length / 2 }, (_, i) => [Number(xy[2 * i]), Number(xy[2 * i + 1])]));
    }
    case "grid": {
      const { cells, columns, rows } = elevation;
      const { column0, columnPerX, columnPerY, row0, rowPerX, rowPerY } = cells;
      const turned = columnPerX * rowPerY - columnPerY * rowPerX;
      const place = (column: number, row: number): readonly [number, number] => {
        const [across, down] = [column - column0, row - row0];
        return [(across * rowPerY - down * columnPerY) / turned, (down * columnPerX - across * rowPerX) / turned];
      };
      return boxOf([place(0, 0), place(columns - 1, 0), place(0, rows - 1), place(columns - 1, rows - 1)]);
    }
    default:
      return elevation satisfies never;
  }
}

function boxOf(places: readonly (readonly [x_m: number, y_m: number])[]): PlaneBox | null {
  let [west_m, south_m, east_m, north_m] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x_m, y_m] of places) {
    west_m = Math.min(west_m, x_m);
    south_m = Math.min(south_m, y_m);
    east_m = Math.max(east_m, x_m);
    north_m = Math.max(north_m, y_m);
  }
  return places.length === 0 ? null : { west_m, south_m, east_m, north_m };
}

/** The square the map is drawn in: 0 to 1 eastward, 0 to 1 southward. For drawing only, never for a length. */
export interface MercatorPoint {
  readonly x: number;
  readonly y: number;
}

/** Web Mercator of a place; latitudes within 85 degrees. */
export function mercator(lng_deg: number, lat_deg: number): MercatorPoint {
  return {
    x: (lng_deg + 180) / 360,
    y: (180 - (180 / Math.PI) * Math.log(Math.tan(Math.PI / 4 + (lat_deg * Math.PI) / 360))) / 360,
  };
}

const equator_m = 40_075_016.686;

/** What a metre on the ground is in that square at a latitude. For sizes on the screen, never for a length. */
export function mercatorOfMetre(lat_deg: number): number {
  return 1 / (equator_m * Math.cos((lat_deg * Math.PI) / 180));
}

/**
 * A 4 x 4 matrix (column order) that takes offsets from `origin` where `matrix` took map coordinates.
 * Worked in doubles: offsets of a parcel fit a Float32, the coordinates themselves do not.
 */
export function offsetMatrix(matrix: ArrayLike<number>, origin: MercatorPoint): Float32Array {
  const at = (i: number): number => matrix[i] ?? 0;
  const result = new Float32Array(16);
  for (let i = 0; i < 12; i++) result[i] = at(i);
  for (let row = 0; row < 4; row++) result[12 + row] = at(row) * origin.x + at(4 + row) * origin.y + at(12 + row);
  return result;
}

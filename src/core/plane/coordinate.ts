/**
 * The two kinds of position, told apart by the compiler because a mix-up is fatal:
 * lon/lat in degrees (WGS84) and plane metres (x east, y north of the frame's origin).
 */
declare const lonLatBrand: unique symbol;
declare const planeBrand: unique symbol;

export type LonLat = readonly [lon_deg: number, lat_deg: number] & { readonly [lonLatBrand]: true };
export type PlanePoint = readonly [x_m: number, y_m: number] & { readonly [planeBrand]: true };

/** A position in degrees; the caller has checked that both numbers are finite. */
export function lonLat(lon_deg: number, lat_deg: number): LonLat {
  return [lon_deg, lat_deg] as readonly [number, number] as LonLat;
}

/** A position in plane metres. */
export function planePoint(x_m: number, y_m: number): PlanePoint {
  return [x_m, y_m] as readonly [number, number] as PlanePoint;
}

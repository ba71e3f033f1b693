import { isObject } from "./sound-geometry.ts";

/**
 * The system that a `crs` member names, as GeoJSON had it before RFC 7946: "EPSG:32610"; null for none and for longitude and latitude on WGS 84, in
 * which order the file's numbers then stand whatever the register says. Source: GeoJSON format specification of 2008, section 3.
 */
export function statedSystem(json: { readonly [name: string]: unknown }): string | null {
  const { crs } = json;
  if (!isObject(crs)) return null;
  const { properties } = crs;
  const name = isObject(properties) && typeof properties.name === "string" ? properties.name : JSON.stringify(crs);
  if (/CRS:?:?(1\.3:)?(84|83|27)h?$/i.test(name)) return null;
  const code = /(?:EPSG)(?::[\d.]*)?:+(\d{4,6})$/i.exec(name)?.[1];
  if (code === "4326") return null;
  return code === undefined ? name.slice(0, 200) : `EPSG:${code}`;
}

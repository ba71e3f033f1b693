import type { CoordinateSystem } from "../core/systems/coordinate-system.ts";

/**
 * Whether a system's numbers are a place where it is of use: they lead to a place and back again, and, where the system has a middle
 * meridian, not further from it than the projection serves.
 */
export function landsWell(system: CoordinateSystem, x: number, y: number): boolean {
  const [lon, lat] = tried(() => system.toLonLat(x, y));
  if (!(Math.abs(lon) <= 180 && Math.abs(lat) <= 90)) return false;
  if (system.kind === "geographic") return true;
  const [backX, backY] = tried(() => system.fromLonLat(lon, lat));
  // A drawing's numbers are good to a tenth of a unit here: what has no place comes back kilometres off.
  if (!(Math.abs(backX - x) < 0.1 && Math.abs(backY - y) < 0.1)) return false;
  const middle = middleOf(system.definition);
  if (middle === null) return true;
  const { lon_deg, lat_deg, reach_deg } = middle;
  const east_deg = Math.abs(((lon - lon_deg + 540) % 360) - 180);
  return east_deg <= reach_deg && (lat_deg === null || Math.abs(lat - lat_deg) <= reach_deg);
}

function tried(place: () => readonly [number, number]): readonly [number, number] {
  try {
    return place();
  } catch {
    return [Number.NaN, Number.NaN];
  }
}

/** Reaches: a zone of UTM is 6 degrees wide and used beyond its edge; a plane around a place of its own is for that place. */
function middleOf(definition: string) {
  const number = (key: string): number | null => {
    const found = new RegExp(`\\+${key}=(-?[\\d.]+)`).exec(definition)?.[1];
    return found === undefined ? null : Number(found);
  };
  if (/\+proj=utm\b/.test(definition)) {
    const zone = number("zone");
    return zone === null ? null : { lon_deg: 6 * zone - 183, lat_deg: null, reach_deg: 9 };
  }
  const lon_deg = number("lon_0");
  if (lon_deg === null) return null;
  if (/\+proj=(tmerc|etmerc)\b/.test(definition)) {
    const isOwn = (number("x_0") ?? 0) === 0 && (number("y_0") ?? 0) === 0;
    return { lon_deg, lat_deg: isOwn ? number("lat_0") : null, reach_deg: 12 };
  }
  return /\+proj=(lcc|omerc|sterea)\b/.test(definition) ? { lon_deg, lat_deg: null, reach_deg: 30 } : null;
}

import { type Elevation, heightReader } from "../ground/elevation.ts";
import type { Row } from "../rows/rows.ts";

/** The ground line under a row. */
export interface SideGround {
  /** "unknown": the spot heights do not reach over the whole row, so it is drawn level. */
  readonly kind: "flat" | "heights" | "unknown";
  /** Stations ascending; heights above the lowest of them. */
  readonly points: readonly { readonly station_m: number; readonly height_m: number }[];
}

/** The ground is looked at this often along a row. */
const step_m = 2;

/** The ground under a row and so far beyond its ends, m. Beyond its ends it goes on level where no height is known. */
export function sideGround(elevation: Elevation, row: Row, from_m: number, to_m: number): SideGround {
  const level = (kind: "flat" | "unknown"): SideGround => ({
    kind,
    points: [from_m, to_m].map((station_m) => ({ station_m, height_m: 0 })),
  });
  if (elevation.kind === "flat") return level("flat");
  const heightAt = heightReader(elevation);
  const at = (station_m: number): number | null => {
    const share = station_m / row.length_m;
    const along = (axis: 0 | 1) => row.start[axis] + share * (row.end[axis] - row.start[axis]);
    return heightAt(along(0), along(1));
  };
  const steps = Math.max(2, Math.ceil(row.length_m / step_m));
  const inner: { station_m: number; height_m: number }[] = [];
  for (let i = 0; i <= steps; i++) {
    const station_m = (i * row.length_m) / steps;
    const height_m = at(station_m);
    if (height_m === null) return level("unknown");
    inner.push({ station_m, height_m });
  }
  const [first, last] = [Number(inner[0]?.height_m), Number(inner.at(-1)?.height_m)];
  const all = [
    { station_m: from_m, height_m: at(from_m) ?? first },
    ...inner,
    { station_m: to_m, height_m: at(to_m) ?? last },
  ];
  const lowest_m = all.reduce((least_m, { height_m }) => Math.min(least_m, height_m), Infinity);
  return { kind: "heights", points: all.map((each) => ({ ...each, height_m: each.height_m - lowest_m })) };
}

/** Height of the drawn ground at a station, m above its lowest point; level beyond its ends. */
export function groundAt({ points }: SideGround, station_m: number): number {
  const after = points.findIndex((point) => point.station_m >= station_m);
  const [right, left] = [points[after === -1 ? points.length - 1 : after], points[after - 1]];
  if (right === undefined) return 0;
  if (left === undefined || right.station_m === left.station_m) return right.height_m;
  const share = Math.min(1, (station_m - left.station_m) / (right.station_m - left.station_m));
  return left.height_m + share * (right.height_m - left.height_m);
}

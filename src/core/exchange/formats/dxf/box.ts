import { unitLength_m } from "../../../systems/unit-length.ts";
import { featuresAChunk, type HandOverJob } from "../../format.ts";
import { placesOf } from "../../layers/places-of.ts";

/** What a drawing reaches over, in its own unit. */
export interface Box {
  readonly least: readonly [x: number, y: number, z: number];
  readonly most: readonly [x: number, y: number, z: number];
}

/** The extent of everything that goes out; a place in it now and then gives an empty piece, so that a page is never held. */
export function* boxOf({ layers, system }: HandOverJob): Generator<string, Box> {
  const perMetre = metresTo(system.unit);
  const least: [number, number, number] = [Infinity, Infinity, Infinity];
  const most: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  let count = 0;
  for (const layer of layers) {
    for (const { geometry } of layer.features()) {
      for (const { at, height_m } of placesOf(geometry)) {
        const [x, y] = system.fromLonLat(at[0], at[1]);
        const place = [x, y, (height_m ?? 0) * perMetre] as const;
        for (const axis of [0, 1, 2] as const) {
          least[axis] = Math.min(least[axis], place[axis]);
          most[axis] = Math.max(most[axis], place[axis]);
        }
      }
      if (++count % featuresAChunk === 0) yield "";
    }
  }
  return count === 0 ? { least: [0, 0, 0], most: [0, 0, 0] } : { least, most };
}

/** How many of a system's unit a metre is. */
export function metresTo(unit: HandOverJob["system"]["unit"]): number {
  return unit === "deg" ? 1 : 1 / unitLength_m[unit];
}

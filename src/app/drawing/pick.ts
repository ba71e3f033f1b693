import type { Map as MapLibreMap } from "maplibre-gl";
import { type DrawnThing, drawnThing, drawnThings } from "../../core/drawing/drawn.ts";
import type { FeatureKey, Project } from "../../core/project/project.ts";
import type { SideChoice } from "./drawing-state.ts";
import { distance_px, distanceToPiece_px, isInside, type Pixel, pathPixels, sidesOf } from "./pixels.ts";

/** How near a click must be to a side, and how near to a spot. */
const sideReach_px = 12;
const spotReach_px = 14;

/** The side of a thing nearest to a pixel, within reach; null when there is none. */
export function sideAt(map: MapLibreMap, project: Project, key: FeatureKey, at: Pixel): SideChoice | null {
  const thing = drawnThing(project, key);
  let nearest: SideChoice | null = null;
  let least = sideReach_px;
  for (const path of thing?.paths ?? []) {
    sidesOf({ closed: path.closed, corners: pathPixels(map, path) }).forEach(([from, to], edge) => {
      const distance = distanceToPiece_px(at, from, to);
      if (distance > least) return;
      least = distance;
      nearest = { path: path.path, edge };
    });
  }
  return nearest;
}

/** The drawn thing at a pixel: spots before lines before what is filled; parcels and blocks by their outline only. */
export function thingAt(map: MapLibreMap, project: Project, at: Pixel): FeatureKey | null {
  let best: { readonly key: FeatureKey; readonly rank: number } | null = null;
  for (const thing of drawnThings(project)) {
    if (thing.role === "edge") continue;
    const rank = rankAt(map, thing, at);
    if (rank !== null && (!best || rank < best.rank)) best = { key: thing.key, rank };
  }
  return best?.key ?? null;
}

function rankAt(map: MapLibreMap, thing: DrawnThing, at: Pixel): number | null {
  const isFilled = thing.role !== "parcel" && thing.role !== "block" && thing.role !== null;
  const paths = thing.paths.map((path) => ({ closed: path.closed, corners: pathPixels(map, path) }));
  let rank: number | null = null;
  for (const { closed, corners } of paths) {
    const [only] = corners;
    if (corners.length === 1 && only) {
      const distance = distance_px(only, at);
      if (distance <= spotReach_px) rank = Math.min(rank ?? 100, distance / spotReach_px);
      continue;
    }
    for (const [from, to] of sidesOf({ closed, corners })) {
      const distance = distanceToPiece_px(at, from, to);
      if (distance <= sideReach_px) rank = Math.min(rank ?? 100, 1 + distance / sideReach_px);
    }
  }
  if (rank !== null || !isFilled) return rank;
  const areas = paths.filter(({ closed }) => closed).map(({ corners }) => corners);
  return isInside(at, areas) ? 3 : null;
}

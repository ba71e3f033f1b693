import type { Map as MapLibreMap } from "maplibre-gl";
import type { DrawnThing } from "../../core/drawing/drawn.ts";
import type { LonLat } from "../../core/plane/coordinate.ts";
import { distance_px, type Pixel, pathPixels, pixelOf, sidesOf } from "./pixels.ts";

/** A corner, or the middle of a side where one can be put in. */
export interface HandlePlace {
  readonly kind: "corner" | "middle";
  readonly path: number;
  /** Number of the corner, or of the side. */
  readonly index: number;
  readonly at: LonLat;
  readonly name: string;
}

/** More than this many are not put on the page at once: those in view, nearest to its middle. */
const mostHandles = 300;
/** Sides shorter than this on the screen get no middle handle: it would lie under the corners. */
const leastSide_px = 56;
const leastApart_px = 22;
const margin_px = 24;

/** Those that do not lie on the one before: the others come when the map is nearer. */
function apart(handles: readonly { readonly handle: HandlePlace; readonly at: Pixel }[]): HandlePlace[] {
  const kept: { readonly handle: HandlePlace; readonly at: Pixel }[] = [];
  for (const each of handles) {
    const last = kept.at(-1);
    if (last?.handle.path === each.handle.path && distance_px(last.at, each.at) < leastApart_px) continue;
    kept.push(each);
  }
  return kept.map(({ handle }) => handle);
}

/** The handles that a thing shows now: all its corners, and middles of sides that are long enough on the screen. */
export function handlesOf(
  map: MapLibreMap,
  thing: DrawnThing,
  middle: (from: LonLat, to: LonLat) => LonLat,
): HandlePlace[] {
  const { clientWidth, clientHeight } = map.getContainer();
  const isSeen = ({ x, y }: Pixel): boolean =>
    x > -margin_px && y > -margin_px && x < clientWidth + margin_px && y < clientHeight + margin_px;
  const count = thing.paths.reduce((sum, { corners }) => sum + corners.length, 0);
  const isLarge = count > mostHandles / 2;
  const several = thing.paths.length > 1;
  const handles = thing.paths.flatMap((path): HandlePlace[] => {
    const pixels = pathPixels(map, path);
    const of = several ? `${path.isHole ? "hole" : "outline"} ${path.path + 1}, ` : "";
    const corners = path.corners.map(
      (at, index): HandlePlace => ({ kind: "corner", path: path.path, index, at, name: `${of}corner ${index + 1}` }),
    );
    const sides = sidesOf({ closed: path.closed, corners: path.corners });
    const middles = sidesOf({ closed: path.closed, corners: pixels }).flatMap(([from, to], index): HandlePlace[] => {
      const ends = sides[index];
      if (!ends || distance_px(from, to) < leastSide_px) return [];
      const at = middle(ends[0], ends[1]);
      return [{ kind: "middle", path: path.path, index, at, name: `${of}middle of side ${index + 1}` }];
    });
    return [...corners, ...middles];
  });
  if (!isLarge) return handles;
  const seen = apart(handles.map((handle) => ({ handle, at: pixelOf(map, handle.at) })).filter(({ at }) => isSeen(at)));
  const centre = { x: clientWidth / 2, y: clientHeight / 2 };
  const distance = ({ at }: HandlePlace): number => distance_px(pixelOf(map, at), centre);
  return seen.sort((a, b) => distance(a) - distance(b)).slice(0, mostHandles);
}

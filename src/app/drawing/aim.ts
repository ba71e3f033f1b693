import type { Map as MapLibreMap } from "maplibre-gl";
import type { CornerRef } from "../../core/drawing/drawn.ts";
import { drawnThings } from "../../core/drawing/drawn.ts";
import { courseBetween } from "../../core/drawing/place.ts";
import { snapPlace } from "../../core/drawing/snap.ts";
import type { LonLat } from "../../core/plane/coordinate.ts";
import { current } from "../history.ts";
import type { Store } from "../store.ts";
import { frameNear } from "./drawing-frame.ts";
import type { Held } from "./drawing-state.ts";
import { distance_px, type Pixel, pixelOf, placeOf, reach_m } from "./pixels.ts";

/** What is around the place that a pointer holds. */
export interface Around {
  readonly previous?: LonLat | undefined;
  readonly beforePrevious?: LonLat | undefined;
  readonly first?: LonLat | undefined;
  /** The corner that is dragged: it does not snap to itself. */
  readonly except?: CornerRef | undefined;
  /** A corner that closes the outline when the pointer is near it. */
  readonly closing?: LonLat | undefined;
}

export interface Pointer {
  readonly pixel: Pixel;
  readonly isTouch: boolean;
  /** Held down to leave snapping aside. */
  readonly isFree: boolean;
}

export const reach_px = (isTouch: boolean): number => (isTouch ? 20 : 12);

/** Where a pointer means to go: the place under it, or what it snaps to. */
export function aim(map: MapLibreMap, store: Store, pointer: Pointer, around: Around): Held {
  const under = placeOf(map, pointer.pixel);
  const frame = frameNear(store, around.previous ?? under);
  const closing = around.closing;
  const reach = reach_px(pointer.isTouch);
  if (closing && distance_px(pixelOf(map, closing), pointer.pixel) <= reach) {
    return { at: closing, words: "Close the outline here", guides: [], course: null, closes: true };
  }
  const history = store.history.peek();
  if (!frame || !history) return { at: under, words: "", guides: [], course: null, closes: false };
  const isSnapping = store.drawing.isSnapping.peek() && !pointer.isFree;
  const snapped = isSnapping
    ? snapPlace({
        frame,
        things: drawnThings(current(history).project),
        at: under,
        reach_m: reach_m(map, frame, under, reach),
        ...(around.previous ? { previous: around.previous } : {}),
        ...(around.beforePrevious ? { beforePrevious: around.beforePrevious } : {}),
        ...(around.first ? { first: around.first } : {}),
        ...(around.except ? { except: around.except } : {}),
      })
    : { at: under, guides: [], words: "" };
  const course = around.previous ? courseBetween(frame, around.previous, snapped.at) : null;
  return { at: snapped.at, words: snapped.words, guides: snapped.guides, course, closes: false };
}

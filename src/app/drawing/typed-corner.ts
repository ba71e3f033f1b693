import { parseCourse, parsePlace, placeAt } from "../../core/drawing/place.ts";
import type { LonLat } from "../../core/plane/coordinate.ts";
import type { Store } from "../store.ts";
import { frameNear } from "./drawing-frame.ts";

export type TypedCorner = { readonly ok: true; readonly at: LonLat } | { readonly ok: false; readonly reason: string };

/** The place that was typed: a course from a corner ("32.4 m at 118"), or latitude and longitude. */
export function typedCorner(store: Store, typed: string, from: LonLat | null): TypedCorner {
  const place = parsePlace(typed);
  if (place.ok) return place;
  if (!from) return place;
  const course = parseCourse(typed, store.units.peek());
  const frame = frameNear(store, from);
  if (!course.ok || !frame) return course.ok ? place : course;
  return { ok: true, at: placeAt(frame, from, course) };
}

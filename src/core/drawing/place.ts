import { type LonLat, lonLat, planePoint } from "../plane/coordinate.ts";
import type { Frame } from "../plane/frame.ts";
import { checkOrigin } from "../project/check-frame.ts";
import type { Project } from "../project/project.ts";
import { parseQuantity, type UnitSystem } from "../units.ts";
import { frameAt, originOf } from "./frame-at.ts";
import { type PlaceReading, readPlace } from "./place-text.ts";

/** A way from one place to another: length in metres, true bearing at its beginning in [0, 360). */
export interface Course {
  readonly length_m: number;
  readonly bearing_deg: number;
}

export type CourseReading = ({ readonly ok: true } & Course) | { readonly ok: false; readonly reason: string };

/** The plane to draw in: the project's own, else one around the place; the same object for places near each other. */
export function drawingFrame(project: Project, near: LonLat): Frame {
  return frameAt(originOf(project) ?? lonLat(...checkOrigin(near)));
}

/** The way between two places. */
export function courseBetween(frame: Frame, from: LonLat, to: LonLat): Course {
  const begin = frame.toPlane(from);
  const end = frame.toPlane(to);
  const [dx, dy] = [end[0] - begin[0], end[1] - begin[1]];
  const grid_deg = (Math.atan2(dx, dy) * 180) / Math.PI;
  return { length_m: Math.hypot(dx, dy), bearing_deg: turned_deg(grid_deg + frame.convergence_deg(begin)) };
}

/** Where a way ends that begins at a place. */
export function placeAt(frame: Frame, from: LonLat, { length_m, bearing_deg }: Course): LonLat {
  const begin = frame.toPlane(from);
  const angle = ((bearing_deg - frame.convergence_deg(begin)) * Math.PI) / 180;
  return frame.toLonLat(planePoint(begin[0] + length_m * Math.sin(angle), begin[1] + length_m * Math.cos(angle)));
}

/**
 * A place as a person types it, latitude first: "38.2914, -122.4580", "38.2914 N 122.458 W", "38° 17.484' N, 122° 27.48' W",
 * `38°17'29"N 122°27'29"W`. With letters the order is free. Refused with a reason: a comma in place of the point, one number only, a place
 * off the globe, minutes of 60 or more, a sign beside a letter.
 */
export function parsePlace(text: string): PlaceReading {
  return readPlace(text);
}

/** A place in the notation of `parsePlace`, 7 decimals: a centimetre. */
export function formatPlace([lon_deg, lat_deg]: LonLat): string {
  return `${decimal(lat_deg)}, ${decimal(lon_deg)}`;
}

/**
 * A length and a bearing as a person types them: "32.4 m at 118", "120 ft 45.5°", "7 ft 6 in, 90". A bare length is in metres, or in feet
 * where the units are US. Refused with a reason: a length of nothing or beyond 20 km, a bearing outside 0 to 360.
 */
export function parseCourse(text: string, units: UnitSystem): CourseReading {
  const trimmed = text.trim();
  const [, length, bearing] =
    /^(.*?)(?:\s*[,;@]\s*|\s+at\s+|\s+)([\d.]+)\s*(?:°|º|deg(?:rees)?)?(?:\s+true)?$/i.exec(trimmed) ?? [];
  if (length === undefined || bearing === undefined || length === "") {
    return refuse('write a length and a bearing, such as "32.4 m at 118"');
  }
  if (/\d,[\d.]+\D*$/.test(trimmed)) return refuse("a comma in a number can mean two things: write 32.4, not 32,4");
  const amount = /^[\d.]+$/.test(length) && units === "us" ? `${length} ft` : length;
  const parsed = parseQuantity("length", amount);
  if (!parsed.ok) return refuse(`the length "${length}" was not understood: ${parsed.reason}`);
  if (parsed.value <= 0 || parsed.value > longest_m)
    return refuse("the length must be more than nothing and at most 20 km");
  const bearing_deg = /^\d+(?:\.\d*)?$|^\.\d+$/.test(bearing) ? Number(bearing) : Number.NaN;
  if (!(bearing_deg >= 0 && bearing_deg <= 360))
    return refuse("the bearing must be from 0 to 360 degrees, clockwise from north");
  return { ok: true, length_m: parsed.value, bearing_deg: bearing_deg % 360 };
}

/** As far as the local plane reaches from one end to the other. */
const longest_m = 20_000;

function decimal(degrees: number): string {
  return (Number(degrees.toFixed(7)) + 0).toFixed(7);
}

/** The same direction in [0, 360); noise of a way due north is 0. */
export function turned_deg(bearing_deg: number): number {
  const turned = ((bearing_deg % 360) + 360) % 360;
  return turned >= 360 - 1e-12 ? 0 : turned;
}

function refuse(reason: string): CourseReading {
  return { ok: false, reason };
}

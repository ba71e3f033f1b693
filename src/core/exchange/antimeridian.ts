import { lonLat } from "../plane/coordinate.ts";
import type { Place } from "./layers/layer.ts";

type Rings = readonly (readonly Place[])[];

/** A line in pieces that do not cross the antimeridian: one, unless it does. Source: RFC 7946 section 3.1.9. */
export function cutLine(places: readonly Place[]): readonly (readonly Place[])[] {
  const pieces: (readonly Place[])[] = [];
  let piece: Place[] = [];
  places.forEach((to, i) => {
    const from = places[i - 1];
    if (from !== undefined && Math.abs(from.at[0] - to.at[0]) > 180) {
      const side_deg = from.at[0] > 0 ? 180 : -180;
      const crossing = crossingOf(from, { ...to, at: lonLat(to.at[0] + 2 * side_deg, to.at[1]) }, side_deg);
      pieces.push([...piece, crossing]);
      piece = [{ ...crossing, at: lonLat(-side_deg, crossing.at[1]) }];
    }
    piece.push(to);
  });
  return [...pieces, piece];
}

/**
 * Polygons that do not cross the antimeridian: the same ones, unless one does; each in the order and direction it had. Holes that are
 * cut become part of the outlines. Source: RFC 7946 section 3.1.9.
 */
export function cutArea(polygons: readonly Rings[]): readonly Rings[] {
  return polygons.flatMap((rings) => {
    const crosses = rings.some((ring) =>
      ring.some(({ at }, i) => Math.abs(at[0] - (ring.at(i - 1)?.at[0] ?? at[0])) > 180),
    );
    if (!crosses) return [rings];
    // All on the eastern side of the earth, where the antimeridian is 180 and what lies beyond it is more.
    const turned = rings.map((ring) => ring.map((place) => shifted(place, place.at[0] < 0 ? 360 : 0)));
    const beyond = half(turned, (lon) => lon >= 180);
    return [
      ...half(turned, (lon) => lon < 180),
      ...beyond.map((piece) => piece.map((ring) => ring.map((place) => shifted(place, -360)))),
    ];
  });
}

/** One end of a stretch of outline on this side. */
interface Stretch {
  readonly places: readonly Place[];
  /** Latitudes where it comes from the antimeridian and where it ends there. */
  readonly from: number;
  readonly to: number;
}

/**
 * What of a polygon lies on one side of 180: stretches of its rings, joined along the antimeridian. Where the rings meet it, the ground
 * lies between the first and the second place from the south, between the third and the fourth, and so on.
 */
function half(rings: Rings, isHere: (lon_deg: number) => boolean): readonly Rings[] {
  const whole = rings.filter((ring) => ring.every(({ at }) => isHere(at[0])));
  const stretches = rings.flatMap((ring) => stretchesOf(ring, isHere));
  const meetings = stretches
    .flatMap(({ from, to }, i) => [
      { lat: from, stretch: i, isEnd: false },
      { lat: to, stretch: i, isEnd: true },
    ])
    .sort((a, b) => a.lat - b.lat);
  const next = new Map<number, number>();
  for (let i = 0; i + 1 < meetings.length; i += 2) {
    const pair = [meetings[i], meetings[i + 1]];
    const end = pair.find((meeting) => meeting?.isEnd === true);
    const start = pair.find((meeting) => meeting?.isEnd === false);
    if (end !== undefined && start !== undefined) next.set(end.stretch, start.stretch);
  }
  const outers: Place[][] = [];
  const used = new Set<number>();
  for (const first of stretches.keys()) {
    const outer: Place[] = [];
    for (let at: number | undefined = first; at !== undefined && !used.has(at); at = next.get(at)) {
      used.add(at);
      outer.push(...(stretches[at]?.places ?? []));
    }
    if (outer.length > 2) outers.push(outer);
  }
  const [outline, ...holes] = rings;
  if (outline === undefined) return [];
  const pieces = whole.includes(outline) ? [outline] : outers;
  const kept = holes.filter((hole) => whole.includes(hole));
  return pieces.map((piece) => [piece, ...kept.filter(([corner]) => corner !== undefined && isInside(piece, corner))]);
}

/** The stretches of a ring on one side, each from where it comes in to where it goes out; none of a ring that lies whole on a side. */
function stretchesOf(ring: readonly Place[], isHere: (lon_deg: number) => boolean): readonly Stretch[] {
  const start = ring.findIndex((place, i) => isHere(place.at[0]) && !isHere(ring.at(i - 1)?.at[0] ?? place.at[0]));
  if (start < 0 || ring.every(({ at }) => isHere(at[0]))) return [];
  const stretches: Stretch[] = [];
  let open: Place[] | null = null;
  for (let i = start; i <= start + ring.length; i++) {
    const place = ring[i % ring.length];
    const before = ring.at((i - 1 + ring.length) % ring.length);
    if (place === undefined || before === undefined) continue;
    const here = isHere(place.at[0]);
    if (here && open === null && i < start + ring.length) open = [crossingOf(before, place, 180), place];
    else if (here && open !== null) open.push(place);
    else if (!here && open !== null) {
      const places: readonly Place[] = [...open, crossingOf(before, place, 180)];
      stretches.push({ places, from: places[0]?.at[1] ?? 0, to: places.at(-1)?.at[1] ?? 0 });
      open = null;
    }
  }
  return stretches;
}

/** Where a straight line between two places meets a longitude, with the height between theirs. */
function crossingOf(from: Place, to: Place, lon_deg: number): Place {
  const width = to.at[0] - from.at[0];
  const share = width === 0 ? 0 : (lon_deg - from.at[0]) / width;
  const isKnown = from.height_m !== null && to.height_m !== null;
  return {
    at: lonLat(lon_deg, from.at[1] + share * (to.at[1] - from.at[1])),
    height_m: isKnown ? from.height_m + share * (to.height_m - from.height_m) : null,
  };
}

function shifted({ at, height_m }: Place, by_deg: number): Place {
  return { at: lonLat(at[0] + by_deg, at[1]), height_m };
}

/** Even-odd, along the parallel. */
function isInside(ring: readonly Place[], { at: [lon, lat] }: Place): boolean {
  let inside = false;
  ring.forEach(({ at: [lonA, latA] }, i) => {
    const [lonB, latB] = ring.at(i - 1)?.at ?? [lonA, latA];
    if (latA > lat !== latB > lat && lon < lonA + ((lat - latA) / (latB - latA)) * (lonB - lonA)) inside = !inside;
  });
  return inside;
}

import type { BandSet } from "../../src/core/plane/band-outline.ts";
import type { RingSet } from "../../src/core/plane/overlay.ts";
import { between, createRandom, type Random, wholeBetween } from "./random.ts";

/** An invented parcel in the plane: a star-shaped outline (counter-clockwise) with star-shaped holes (clockwise) inside it, none touching. */
export interface TestParcel {
  readonly seed: number;
  readonly rings: RingSet;
  /** The edges in ring order, then obstacles (trees and fences), as pieces with the distance to keep from each. */
  readonly bands: BandSet;
}

export interface ParcelWish {
  readonly seed: number;
  /** Over all rings. */
  readonly vertices: number;
  readonly holes: number;
  readonly area_m2: number;
  /** Setbacks that edges draw from at random. */
  readonly setbacks_m: readonly number[];
  /** 0 is nearly round, 0.5 has deep bays. */
  readonly roughness: number;
  /** Trees (points) and fences (lines) anywhere on the ground. */
  readonly obstacles?: number;
}

/** The three parcels of the benchmarks: one acre, 40 hectares and a thousand hectares once their holes are off. */
export const benchParcels = {
  A: { seed: 101, vertices: 20, holes: 0, area_m2: 4046.8564224, setbacks_m: [3, 8, 15], roughness: 0.25 },
  B: { seed: 102, vertices: 500, holes: 10, area_m2: 447_000, setbacks_m: [3, 8, 15], roughness: 0.25 },
  C: { seed: 103, vertices: 10_000, holes: 20, area_m2: 12_400_000, setbacks_m: [3, 8, 15], roughness: 0.25 },
} as const satisfies Record<string, ParcelWish>;

/** A random parcel of the size vineyards have (0.1 to 8 ha), up to three holes and four obstacles, a distance of its own for each edge. */
export function createRandomParcel(seed: number, leastSetback_m = 0): TestParcel {
  const random = createRandom(seed);
  const holes = wholeBetween(random, 0, 3);
  const vertices = wholeBetween(random, 4, 40) + 6 * holes;
  const setbacks_m = Array.from({ length: 7 }, () => between(random, leastSetback_m, 15));
  const area_m2 = 10 ** between(random, 3, 4.9);
  const roughness = between(random, 0, 0.5);
  const obstacles = wholeBetween(random, 0, 4);
  return createParcel({ seed, vertices, holes, area_m2, setbacks_m, roughness, obstacles });
}

export function createParcel(wish: ParcelWish): TestParcel {
  const random = createRandom(wish.seed);
  const perHole = wish.holes === 0 ? 0 : Math.max(4, Math.round(wish.vertices / (6 * wish.holes + 4)));
  const outer = star(random, wish.vertices - wish.holes * perHole, wish.roughness);
  const unitArea = Math.abs(ringArea(outer));
  const scale = Math.sqrt(wish.area_m2 / unitArea);
  const shape = outer.map(([x, y]): Point => [x * scale, y * scale]);
  const rings = [shape];
  const taken: { x: number; y: number; reach: number }[] = [];
  for (let h = 0; h < wish.holes; h++) {
    // A hole's disc is halved until it finds room; after many tries it is tiny, so that the wished number is always reached.
    for (let tries = 0, reach = 0.16 * scale; ; tries++) {
      if (tries % 20 === 19) reach /= 2;
      const angle = between(random, 0, 2 * Math.PI);
      const away = between(random, 0, scale);
      const [x, y] = [away * Math.cos(angle), away * Math.sin(angle)];
      if (!inside(shape, x, y) || distanceToRing(shape, x, y) < 1.2 * reach) continue;
      if (taken.some((other) => Math.hypot(other.x - x, other.y - y) < 1.2 * (reach + other.reach))) continue;
      taken.push({ x, y, reach });
      const blob = star(random, perHole, wish.roughness);
      const widest = Math.max(...blob.map(([px, py]) => Math.hypot(px, py)));
      rings.push(blob.map(([px, py]): Point => [x + (px * reach) / widest, y + (py * reach) / widest]).reverse());
      break;
    }
  }
  const ringSet = toRingSet(rings);
  const edges = rings.flatMap((ring) => ring.map((from, i) => [from, ring[(i + 1) % ring.length] ?? from] as const));
  const pieces = edges.flatMap(([[x1, y1], [x2, y2]]) => [x1, y1, x2, y2]);
  for (let k = 0; k < (wish.obstacles ?? 0); k++) {
    const [x, y] = [between(random, -scale, scale), between(random, -scale, scale)];
    const isTree = random() < 0.5;
    pieces.push(x, y, isTree ? x : between(random, -scale, scale), isTree ? y : between(random, -scale, scale));
  }
  const distance = () => wish.setbacks_m[wholeBetween(random, 0, wish.setbacks_m.length - 1)] ?? 0;
  return {
    seed: wish.seed,
    rings: ringSet,
    bands: { xy: Float64Array.from(pieces), distance_m: Float64Array.from({ length: pieces.length / 4 }, distance) },
  };
}

export type Point = readonly [x: number, y: number];

/** Rings as the core takes them. */
export function toRingSet(rings: readonly (readonly Point[])[]): RingSet {
  const ringStart = [0];
  for (const ring of rings) ringStart.push((ringStart.at(-1) ?? 0) + ring.length);
  return { xy: Float64Array.from(rings.flat(2)), ringStart: Int32Array.from(ringStart) };
}

/** Ring set as lists of points. */
export function toPoints({ xy, ringStart }: RingSet): Point[][] {
  return Array.from({ length: ringStart.length - 1 }, (_, r) => {
    const [from, to] = [ringStart[r] ?? 0, ringStart[r + 1] ?? 0];
    return Array.from({ length: to - from }, (_, i): Point => [xy[2 * (from + i)] ?? 0, xy[2 * (from + i) + 1] ?? 0]);
  });
}

/** Positive for a counter-clockwise ring. */
export function ringArea(ring: readonly Point[]): number {
  const [x0, y0] = ring[0] ?? [0, 0];
  return ring.reduce((sum, [x1, y1], i) => {
    const [x2, y2] = ring[(i + 1) % ring.length] ?? [0, 0];
    return sum + ((x1 - x0) * (y2 - y0) - (x2 - x0) * (y1 - y0)) / 2;
  }, 0);
}

/** A turn and a shift of the plane. */
export interface Pose {
  readonly turn_deg: number;
  readonly x_m: number;
  readonly y_m: number;
}

/** Five ways to lay the same ground; every answer in the plane must come out alike in them. */
export const fivePoses: readonly Pose[] = [
  { turn_deg: 0, x_m: 0, y_m: 0 },
  { turn_deg: 37.3, x_m: 1234.5, y_m: -987.6 },
  { turn_deg: 90, x_m: -4000, y_m: 25.25 },
  { turn_deg: 123.456, x_m: 0.1, y_m: 7777.7 },
  { turn_deg: 200, x_m: -3333.3, y_m: -6666.6 },
];

/** x, y pairs turned counter-clockwise about the origin, then shifted. */
export function posed(xy: Float64Array, { turn_deg, x_m, y_m }: Pose): Float64Array {
  const turn = (turn_deg * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const moved = new Float64Array(xy.length);
  for (let i = 0; i + 1 < xy.length; i += 2) {
    const [x, y] = [xy[i] ?? 0, xy[i + 1] ?? 0];
    moved[i] = cos * x - sin * y + x_m;
    moved[i + 1] = sin * x + cos * y + y_m;
  }
  return moved;
}

export function posedParcel(parcel: TestParcel, pose: Pose): TestParcel {
  return {
    seed: parcel.seed,
    rings: { xy: posed(parcel.rings.xy, pose), ringStart: parcel.rings.ringStart },
    bands: { xy: posed(parcel.bands.xy, pose), distance_m: parcel.bands.distance_m },
  };
}

/** A ring around (0, 0) with radius near 1: slow waves for bays, jitter for crookedness; sorted by angle, so it cannot cross itself. */
function star(random: Random, corners: number, roughness: number): Point[] {
  const waves = [2, 3, 5, 7].map((times) => ({
    times,
    height: (roughness * random()) / Math.sqrt(times),
    phase: between(random, 0, 2 * Math.PI),
  }));
  return Array.from({ length: corners }, (_, i): Point => {
    const angle = ((i + between(random, 0.1, 0.9)) * 2 * Math.PI) / corners;
    const wave = waves.reduce((sum, { times, height, phase }) => sum + height * Math.sin(times * angle + phase), 0);
    const radius = Math.max(0.15, 1 + wave) * (1 + between(random, -1, 1) * roughness * Math.min(1, 6 / corners));
    return [radius * Math.cos(angle), radius * Math.sin(angle)];
  });
}

function inside(ring: readonly Point[], x: number, y: number): boolean {
  let within = false;
  ring.forEach(([x1, y1], i) => {
    const [x2, y2] = ring[(i + 1) % ring.length] ?? [0, 0];
    if (y1 > y !== y2 > y && x < x1 + ((y - y1) * (x2 - x1)) / (y2 - y1)) within = !within;
  });
  return within;
}

function distanceToRing(ring: readonly Point[], x: number, y: number): number {
  return ring.reduce((least, [x1, y1], i) => {
    const [x2, y2] = ring[(i + 1) % ring.length] ?? [0, 0];
    return Math.min(least, distanceToPiece(x, y, x1, y1, x2, y2));
  }, Infinity);
}

/** Distance of a point from a straight piece, ends included. */
export function distanceToPiece(x: number, y: number, x1: number, y1: number, x2: number, y2: number): number {
  const [dx, dy] = [x2 - x1, y2 - y1];
  const length2 = dx * dx + dy * dy;
  const along = length2 === 0 ? 0 : Math.min(1, Math.max(0, ((x - x1) * dx + (y - y1) * dy) / length2));
  return Math.hypot(x - x1 - along * dx, y - y1 - along * dy);
}

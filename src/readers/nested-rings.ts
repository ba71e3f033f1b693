import type { Position } from "geojson";

/** More rings than this in one thing are taken for outlines each: what lies in what is worked out pair by pair. */
const mostRings = 1500;

/**
 * Polygons from closed rings in any order and direction: a ring that lies within another is a hole in it, one within a hole is an outline again.
 * Outer rings come out counter-clockwise, holes clockwise (RFC 7946 section 3.1.6).
 */
export function nestedRings(rings: readonly Position[][]): readonly Position[][][] {
  if (rings.length === 1 || rings.length > mostRings) return rings.map((ring) => [wound(ring, true)]);
  const sized = rings.map((ring) => ({ ring, area: Math.abs(signedArea(ring)) })).sort((a, b) => b.area - a.area);
  const outlines: { ring: Position[]; depth: number; holes: Position[][] }[] = [];
  const placed: { ring: Position[]; depth: number; outline: (typeof outlines)[number] }[] = [];
  for (const { ring } of sized) {
    const around = placed.filter((larger) => isWithin(ring, larger.ring)).at(-1);
    const depth = around === undefined ? 0 : around.depth + 1;
    if (depth % 2 === 1 && around !== undefined) {
      around.outline.holes.push(wound(ring, false));
      placed.push({ ring, depth, outline: around.outline });
    } else {
      const outline = { ring: wound(ring, true), depth, holes: [] };
      outlines.push(outline);
      placed.push({ ring, depth, outline });
    }
  }
  return outlines.map(({ ring, holes }) => [ring, ...holes]);
}

/** A closed ring counter-clockwise, or clockwise. */
export function wound(ring: Position[], isLeft: boolean): Position[] {
  return signedArea(ring) > 0 === isLeft ? ring : [...ring].reverse();
}

function signedArea(ring: readonly Position[]): number {
  const [x0 = 0, y0 = 0] = ring[0] ?? [];
  let twice = 0;
  for (let i = 1; i < ring.length; i++) {
    const [ax = 0, ay = 0] = ring[i - 1] ?? [];
    const [bx = 0, by = 0] = ring[i] ?? [];
    twice += (ax - x0) * (by - y0) - (bx - x0) * (ay - y0);
  }
  return twice / 2;
}

/** By the middle of its first side: corners may lie on the other ring. */
function isWithin(ring: readonly Position[], larger: readonly Position[]): boolean {
  const [ax = 0, ay = 0] = ring[0] ?? [];
  const [bx = 0, by = 0] = ring[1] ?? [];
  const [x, y] = [(ax + bx) / 2, (ay + by) / 2];
  let inside = false;
  for (let i = 1; i < larger.length; i++) {
    const [x0 = 0, y0 = 0] = larger[i - 1] ?? [];
    const [x1 = 0, y1 = 0] = larger[i] ?? [];
    if (y0 > y !== y1 > y && x < ((x1 - x0) * (y - y0)) / (y1 - y0) + x0) inside = !inside;
  }
  return inside;
}

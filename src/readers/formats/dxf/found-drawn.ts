import type { Geometry, Position } from "geojson";
import { nestedRings } from "../../nested-rings.ts";
import type { FoundFeature } from "../../reading.ts";
import type { Drawn, DrawnThing } from "./drawn.ts";
import { ownValue } from "./own-data.ts";

type Place = (x: number, y: number, z: number | null) => Position;

/**
 * The things of a drawing as features: what is ours with its names and columns, the others with what kind they are. In a flat drawing a height of 0
 * is none.
 */
export function foundDrawn(things: readonly DrawnThing[], isFlat: boolean, place: Place): readonly FoundFeature[] {
  const kinds = new Map<string, FoundFeature["values"]>();
  const pieces = piecesOfAreas(things);
  const names = namesAtPoints(things);
  return things.flatMap((thing): readonly FoundFeature[] => {
    if (isCaption(thing)) return [];
    const hasHeights = !isFlat || thing.own !== null;
    const position = ([x, y, z]: Drawn) => place(x, y, hasHeights ? z : null);
    const id = ownValue(thing.own, "id");
    const rings = typeof id === "string" ? pieces.get(id) : undefined;
    if (rings !== undefined) {
      if (rings[0]?.thing !== thing) return [];
      return [ownFeature(thing, areaOf(rings, position))];
    }
    const geometry = geometryOf(thing, position);
    if (thing.own !== null && thing.own.pairs.length > 0) return [ownFeature(thing, geometry)];
    if (names.used.has(thing)) return [];
    const { symbol } = thing;
    const plain = kinds.get(thing.type) ?? [["entity", thing.type]];
    kinds.set(thing.type, plain);
    if (symbol === null && thing.values.length === 0) {
      return [{ name: thing.name ?? names.of.get(thing) ?? null, layer: thing.layer, geometry, values: plain }];
    }
    const values = [...plain, ...(symbol === null ? [] : [["block", symbol.block] as const]), ...thing.values];
    return [{ name: thing.name ?? names.of.get(thing) ?? null, layer: thing.layer, geometry, values }];
  });
}

/** Names and lines about our own drawings: what they say stands with the things. */
export function isCaption({ own }: DrawnThing): boolean {
  return own !== null && ["name-of", "about", "system"].some((name) => ownValue(own, name) !== null);
}

function ownFeature({ own, layer }: DrawnThing, geometry: Geometry): FoundFeature {
  const name = ownValue(own, "called");
  const values = (own?.pairs ?? []).filter(([each]) => !["called", "polygon", "ring"].includes(each));
  return { name: typeof name === "string" ? name : null, layer, geometry, values };
}

interface Piece {
  readonly thing: DrawnThing;
  readonly polygon: number;
  readonly ring: number;
}

/** Pieces of our own areas by the id of the area, outer rings before their holes. */
function piecesOfAreas(things: readonly DrawnThing[]): ReadonlyMap<string, readonly Piece[]> {
  const found = new Map<string, Piece[]>();
  for (const thing of things) {
    const [id, polygon, ring] = ["id", "polygon", "ring"].map((name) => ownValue(thing.own, name));
    if (typeof id !== "string" || typeof polygon !== "number" || typeof ring !== "number") continue;
    if (thing.shape.kind !== "area") continue;
    const pieces = found.get(id) ?? [];
    pieces.push({ thing, polygon, ring });
    found.set(id, pieces);
  }
  for (const pieces of found.values()) pieces.sort((a, b) => a.polygon - b.polygon || a.ring - b.ring);
  return found;
}

function areaOf(pieces: readonly Piece[], position: (at: Drawn) => Position): Geometry {
  const numbers = [...new Set(pieces.map(({ polygon }) => polygon))];
  const polygons = numbers.map((number) =>
    pieces.flatMap(({ thing: { shape }, polygon }) =>
      polygon === number && shape.kind === "area" ? shape.rings.map((ring) => closed(ring.map(position))) : [],
    ),
  );
  return asArea(polygons);
}

function geometryOf({ shape }: DrawnThing, position: (at: Drawn) => Position): Geometry {
  switch (shape.kind) {
    case "point":
      return { type: "Point", coordinates: position(shape.at) };
    case "line":
      return { type: "LineString", coordinates: shape.points.map(position) };
    case "area":
      return asArea(nestedRings(shape.rings.map((ring) => closed(ring.map(position)))));
    default:
      return shape satisfies never;
  }
}

function asArea(polygons: readonly (readonly Position[][])[]): Geometry {
  const [first = [], ...more] = polygons.map((rings) => [...rings]);
  return more.length === 0
    ? { type: "Polygon", coordinates: first }
    : { type: "MultiPolygon", coordinates: [first, ...more] };
}

function closed(ring: readonly Position[]): Position[] {
  const [first] = ring;
  return first === undefined ? [] : [...ring, first];
}

/** A text that stands on a point, or on a symbol, to a thousandth of a unit, is its name. */
function namesAtPoints(things: readonly DrawnThing[]) {
  const key = ([x, y]: Drawn) => `${Math.round(x * 1000)} ${Math.round(y * 1000)}`;
  const texts = new Map<string, DrawnThing>();
  for (const thing of things) {
    const { shape, name, own } = thing;
    if (shape.kind === "point" && name !== null && own === null) texts.set(key(shape.at), thing);
  }
  const of = new Map<DrawnThing, string>();
  const used = new Set<DrawnThing>();
  for (const thing of texts.size === 0 ? [] : things) {
    const { shape, type, own } = thing;
    if (shape.kind !== "point" || own !== null || (type !== "POINT" && type !== "INSERT")) continue;
    const text = texts.get(key(shape.at));
    if (text === undefined || text.name === null || used.has(text)) continue;
    of.set(thing, text.name);
    used.add(text);
  }
  return { of, used };
}

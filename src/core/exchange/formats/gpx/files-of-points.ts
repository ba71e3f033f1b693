import type { Layer, LayerFeature, Named } from "../../layers/layer.ts";
import type { Names } from "../../naming.ts";

/** Features of a layer that go into one file: from one number to before another. */
export interface FilePart {
  readonly layer: Layer;
  readonly from: number;
  readonly to: number;
  features(): Iterable<LayerFeature>;
}

/** Features that belong together: those of one row, or one that stands by itself. */
interface Bundle {
  readonly key: string;
  readonly from: number;
  /** Points of each feature. */
  readonly points: number[];
}

/**
 * Which features go into which file, with at most so many points each: a row's stay together as long as they fit. What has more points by itself
 * gets a file of its own, and its name is told.
 */
export function filesOfPoints(
  layers: readonly Layer[],
  names: Names,
  most: number | null,
): { readonly files: readonly (readonly FilePart[])[]; readonly tooLong: readonly string[] } {
  const readers = layers.map(inOrder);
  if (most === null) {
    return { files: [layers.map((layer, i) => part(layer, readers[i], 0, layer.count))], tooLong: [] };
  }
  const files: FilePart[][] = [];
  const tooLong: string[] = [];
  let room = 0;
  layers.forEach((layer, i) => {
    const take = (from: number, to: number, points: number): void => {
      if (points > room || files.length === 0) {
        files.push([]);
        room = most;
      }
      const file = files.at(-1) ?? [];
      const last = file.at(-1);
      const joins = last !== undefined && last.layer === layer && last.to === from;
      if (joins) file.pop();
      file.push(part(layer, readers[i], joins ? last.from : from, to));
      room -= points;
    };
    for (const { from, points } of bundles(layer, names, most, tooLong)) {
      const all = points.reduce((sum, each) => sum + each, 0);
      if (all <= most) take(from, from + points.length, all);
      else for (const [at, each] of points.entries()) take(from + at, from + at + 1, each);
    }
  });
  return { files, tooLong };
}

function bundles(layer: Layer, names: Names, most: number, tooLong: string[]): readonly Bundle[] {
  const found: Bundle[] = [];
  let at = 0;
  for (const { thing, points } of counted(layer)) {
    const { block, row } = thing.parts;
    if (points > most) tooLong.push(names.of(thing));
    const key = row === null ? thing.id : JSON.stringify([block, row]);
    const last = found.at(-1);
    if (last?.key === key) last.points.push(points);
    else found.push({ key, from: at, points: [points] });
    at++;
  }
  return found;
}

function* counted(layer: Layer): Generator<{ readonly thing: Named; readonly points: number }> {
  if (layer.shape === "point") {
    for (const thing of layer.named()) yield { thing, points: 1 };
    return;
  }
  for (const thing of layer.features()) yield { thing, points: pointsOf(thing) };
}

function pointsOf({ geometry }: LayerFeature): number {
  switch (geometry.shape) {
    case "point":
      return 1;
    case "line":
      return geometry.places.length;
    case "area":
      return geometry.polygons.flat().reduce((sum, ring) => sum + ring.length + 1, 0);
    default:
      return geometry satisfies never;
  }
}

type Reader = (from: number, to: number) => Iterable<LayerFeature>;

function part(layer: Layer, reader: Reader | undefined, from: number, to: number): FilePart {
  return { layer, from, to, features: () => reader?.(from, to) ?? [] };
}

/**
 * Reads parts of a layer. Files are mostly asked for in their order: then the layer is gone through once for all of them, not once
 * for each.
 */
function inOrder(layer: Layer): Reader {
  let next = 0;
  let features = layer.features()[Symbol.iterator]();
  return function* (from, to) {
    if (from !== next) {
      features = layer.features()[Symbol.iterator]();
      next = 0;
    }
    while (next < to) {
      const { done, value } = features.next();
      if (done === true) return;
      next++;
      if (next > from) yield value;
    }
  };
}

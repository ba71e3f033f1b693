import type { Drawing, Drawn, DrawnSymbol, DrawnThing } from "./drawn.ts";
import { mostCorners } from "./read-drawing.ts";
import { cornersIn, mapped, placesIn } from "./thing-of.ts";

/** How deep symbols may stand in symbols. */
const mostNested = 16;

/** Things with their symbols put in their places, or null when there are too many. */
export interface SymbolsPlaced {
  readonly things: readonly DrawnThing[];
  /** Symbols that stay a point. */
  readonly points: number;
}

/**
 * The things of a drawing with each symbol (INSERT of a block) as the point that it stands on; one that holds lines or outlines longer than
 * `large` (in the drawing's unit) is part of the drawing, and is taken apart too. Null when that makes more than `most` things: a symbol may
 * stand in a symbol many times over.
 */
export function symbolsPlaced({ blocks, things }: Drawing, large: number, most: number): SymbolsPlaced | null {
  const found: DrawnThing[] = [];
  let points = 0;
  let steps = 0;
  let corners = 0;
  const reach = reachReader(blocks);
  /** Whether it could be done within the limits. */
  const place = (
    thing: DrawnThing,
    change: (at: Drawn) => Drawn,
    scale: number,
    layer: string,
    depth: number,
  ): boolean => {
    corners += cornersIn(thing.shape);
    if (found.length >= most || ++steps > 4 * most || corners > mostCorners) return false;
    const shape = mapped(thing.shape, change);
    // What a block draws on layer 0 is on the layer of its insertion (DXF reference, BLOCK).
    const placed = { ...thing, shape, layer: thing.layer === "0" ? layer : thing.layer };
    const { symbol } = thing;
    const block = symbol === null ? undefined : blocks.get(symbol.block);
    if (symbol === null || block === undefined || thing.shape.kind !== "point") {
      found.push(placed);
      if (symbol !== null) points++;
      return true;
    }
    const size = scale * sizeOf(symbol);
    if (size * reach(symbol.block) < large) {
      found.push(placed);
      points++;
      return true;
    }
    if (depth > mostNested) return false;
    if (thing.values.length > 0) found.push(placed);
    const inner = insertion(symbol, block.base, thing.shape.at);
    return block.things.every((each) => place(each, (at) => change(inner(at)), size, placed.layer, depth + 1));
  };
  const isWhole = things.every((thing) => place(thing, (at) => at, 1, thing.layer, 0));
  return isWhole ? { things: found, points } : null;
}

/** Where the places of a block go: from its base, scaled, turned, then put down. */
function insertion(
  { scaleX, scaleY, scaleZ, turned_rad }: DrawnSymbol,
  base: Drawn,
  at: Drawn,
): (place: Drawn) => Drawn {
  const [cos, sin] = [Math.cos(turned_rad), Math.sin(turned_rad)];
  return ([x, y, z]) => {
    const [u, v] = [(x - base[0]) * scaleX, (y - base[1]) * scaleY];
    const up = z === null ? at[2] : (z - (base[2] ?? 0)) * scaleZ + (at[2] ?? 0);
    return [at[0] + u * cos - v * sin, at[1] + u * sin + v * cos, up];
  };
}

/** How far the lines and outlines of each block reach, symbols in it by their own size; worked out once a block, a circle of blocks counts once. */
function reachReader(blocks: Drawing["blocks"]): (name: string) => number {
  const known = new Map<string, number>();
  const reachOf = (name: string, depth: number): number => {
    const before = known.get(name);
    if (before !== undefined || depth > mostNested) return before ?? 0;
    known.set(name, 0);
    let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
    let within = 0;
    for (const { shape, symbol } of blocks.get(name)?.things ?? []) {
      if (symbol !== null) within = Math.max(within, sizeOf(symbol) * reachOf(symbol.block, depth + 1));
      for (const [x, y] of shape.kind === "point" ? [] : placesIn(shape)) {
        [west, south, east, north] = [Math.min(west, x), Math.min(south, y), Math.max(east, x), Math.max(north, y)];
      }
    }
    const reach = Math.max(within, east < west ? 0 : Math.hypot(east - west, north - south));
    known.set(name, reach);
    return reach;
  };
  return (name) => reachOf(name, 0);
}

function sizeOf({ scaleX, scaleY }: DrawnSymbol): number {
  return Math.max(Math.abs(scaleX), Math.abs(scaleY));
}

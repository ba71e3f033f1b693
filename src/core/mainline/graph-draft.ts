import Flatbush from "flatbush";
import type { Link } from "../graph/graph.ts";
import { type PlanePoint, planePoint } from "../plane/coordinate.ts";
import type { Clearance, Exempt } from "./clearance.ts";

export interface RouteLink extends Link {
  /** Feature that it crosses, by index; -1 for none. */
  readonly crossing: number;
  readonly isDrawn: boolean;
}

/** A graph of places in the making. */
export interface GraphDraft {
  /** x, y pairs. */
  readonly xy: readonly number[];
  readonly links: readonly RouteLink[];
  /** A new node at a place. */
  node(place: PlanePoint): number;
  placeOf(node: number): PlanePoint;
  /** A link whatever lies between; its cost is its length times a factor, and `extra`. */
  link(a: number, b: number, more?: Partial<RouteLink>, factor?: number, extra?: number): number;
  /** A link if there is a straight way and none yet; its number, or -1. */
  linkIfClear(a: number, b: number, factor?: number, exempt?: Exempt): number;
  /** Links each of some nodes with those of the nearest among others that it has a straight way to. */
  linkNearest(nodes: readonly number[], among: readonly number[], most: number, exempt?: Exempt): void;
}

/** A pair of nodes is one whole number, exact up to so many of them. */
const mostNodes = 2 ** 26;

export function createGraphDraft({ isClear }: Pick<Clearance, "isClear">): GraphDraft {
  const xy: number[] = [];
  const links: RouteLink[] = [];
  const numbers = new Map<number, number>();
  const placeOf = (node: number): PlanePoint => planePoint(xy[2 * node] ?? 0, xy[2 * node + 1] ?? 0);
  const apart_m = (a: number, b: number): number => {
    const [p, q] = [placeOf(a), placeOf(b)];
    return Math.hypot(q[0] - p[0], q[1] - p[1]);
  };
  const pairOf = (a: number, b: number): number => (a < b ? a * mostNodes + b : b * mostNodes + a);
  const put = (a: number, b: number, cost: number, more: Partial<RouteLink>): number => {
    const number = links.push({ a, b, cost, crossing: -1, isDrawn: false, ...more }) - 1;
    numbers.set(pairOf(a, b), number);
    return number;
  };
  const linkIfClear = (a: number, b: number, factor = 1, exempt?: Exempt): number => {
    if (a < 0 || b < 0 || a === b) return -1;
    const known = numbers.get(pairOf(a, b));
    if (known !== undefined) return known;
    const [p, q] = [placeOf(a), placeOf(b)];
    return isClear(p[0], p[1], q[0], q[1], exempt) ? put(a, b, apart_m(a, b) * factor, {}) : -1;
  };
  return {
    xy,
    links,
    node: ([x, y]) => xy.push(x, y) / 2 - 1,
    placeOf,
    link: (a, b, more = {}, factor = 1, extra = 0) => put(a, b, apart_m(a, b) * factor + extra, more),
    linkIfClear,
    linkNearest: (nodes, among, most, exempt) => {
      if (among.length === 0) return;
      const tree = new Flatbush(among.length);
      for (const node of among) tree.add(xy[2 * node] ?? 0, xy[2 * node + 1] ?? 0);
      tree.finish();
      for (const node of nodes) {
        const [x, y] = placeOf(node);
        for (const i of tree.neighbors(x, y, most + 1)) linkIfClear(node, among[i] ?? -1, 1, exempt);
      }
    },
  };
}

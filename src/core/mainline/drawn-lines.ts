import { planePoint } from "../plane/coordinate.ts";
import { crossingAlong } from "../plane/segment.ts";
import type { GraphDraft } from "./graph-draft.ts";
import type { RowEnd } from "./heads.ts";

/** A row end whose line meets a drawn line: there its tee goes. */
export interface DrawnTee {
  readonly line: number;
  /** From the beginning of the drawn line. */
  readonly along_m: number;
  /** Past the end post. */
  readonly past_m: number;
}

/** A drawn line in the graph: its nodes in order, and the link from each to the next. */
export interface DrawnWay {
  readonly nodes: readonly number[];
  readonly links: readonly number[];
}

/** As far past its end post a row is led on to meet a drawn line. */
const reach_m = 20;
/** A drawn line can be left every so far. */
const step_m = 10;
/** A drawn line is dug in any case: going along it costs next to nothing. */
const drawnFactor = 1e-6;
/** Places on a drawn line nearer than this are one. */
const same_m = 0.05;

/**
 * Where the line of a row, led on past its end post (and back to the first vine's side by `inside_m`), first meets a drawn line; null
 * where it meets none. `lines` are x, y pairs.
 */
export function drawnTee(end: RowEnd, inside_m: number, lines: readonly Float64Array[]): DrawnTee | null {
  const place = (past_m: number) =>
    planePoint(end.post[0] + past_m * end.outward[0], end.post[1] + past_m * end.outward[1]);
  const from = place(-inside_m);
  const to = place(reach_m);
  let nearest: DrawnTee | null = null;
  lines.forEach((xy, line) => {
    let before_m = 0;
    for (const [px, py, qx, qy] of piecesOf(xy)) {
      const along = crossingAlong(from, to, planePoint(px, py), planePoint(qx, qy));
      const past_m = along === null ? Infinity : along * (inside_m + reach_m) - inside_m;
      if (past_m < (nearest?.past_m ?? Infinity)) {
        const [x, y] = place(past_m);
        nearest = { line, along_m: before_m + Math.hypot(x - px, y - py), past_m };
      }
      before_m += Math.hypot(qx - px, qy - py);
    }
  });
  return nearest;
}

/** Puts drawn lines into a graph, with the heads that lie on them. `tees` and `heads` are those of the row ends, in their order. */
export function addDrawn(
  draft: GraphDraft,
  lines: readonly Float64Array[],
  tees: readonly (DrawnTee | null)[],
  heads: Int32Array,
): readonly DrawnWay[] {
  return lines.map((xy, line): DrawnWay => {
    const stops: { readonly along_m: number; readonly node: () => number; readonly isKept: boolean }[] = [];
    tees.forEach((tee, i) => {
      if (tee?.line === line) stops.push({ along_m: tee.along_m, node: () => Number(heads[i]), isKept: true });
    });
    let before_m = 0;
    const stop = (along_m: number, x: number, y: number, isKept: boolean): void => {
      stops.push({ along_m, node: () => draft.node(planePoint(x, y)), isKept });
    };
    stop(0, xy[0] ?? 0, xy[1] ?? 0, true);
    for (const [px, py, qx, qy] of piecesOf(xy)) {
      const length_m = Math.hypot(qx - px, qy - py);
      const steps = Math.max(1, Math.ceil(length_m / step_m));
      for (let i = 1; i <= steps; i++) {
        const share = i / steps;
        stop(before_m + share * length_m, px + share * (qx - px), py + share * (qy - py), i === steps);
      }
      before_m += length_m;
    }
    stops.sort((a, b) => a.along_m - b.along_m);
    const nodes: number[] = [];
    const links: number[] = [];
    let last_m = -Infinity;
    for (const { along_m, node, isKept } of stops) {
      if (!isKept && along_m - last_m < same_m) continue;
      const next = node();
      const last = nodes.at(-1);
      if (next < 0 || next === last) continue;
      if (last !== undefined) links.push(draft.link(last, next, { isDrawn: true }, drawnFactor));
      nodes.push(next);
      last_m = along_m;
    }
    return { nodes, links };
  });
}

/** The links of a drawn line between two of its nodes; empty when one is not on it. */
export function drawnBetween({ nodes, links }: DrawnWay, a: number, b: number): readonly number[] {
  const [i, j] = [nodes.indexOf(a), nodes.indexOf(b)];
  return i < 0 || j < 0 ? [] : links.slice(Math.min(i, j), Math.max(i, j));
}

function* piecesOf(xy: Float64Array): Iterable<readonly [px: number, py: number, qx: number, qy: number]> {
  for (let i = 0; i + 3 < xy.length; i += 2) yield [xy[i] ?? 0, xy[i + 1] ?? 0, xy[i + 2] ?? 0, xy[i + 3] ?? 0];
}

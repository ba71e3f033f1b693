import type { SetLines } from "./set-lines.ts";
import type { LineJob } from "./watering-job.ts";

/** Legs between which no water leaves, put together: what gets one size. Parallel arrays; each comes after the one it goes on from. */
export interface LineSegments {
  /** By leg. */
  readonly of: readonly number[];
  readonly upstream: readonly number[];
  readonly length_m: readonly number[];
  readonly line: readonly number[];
  /** Point of the route at the downstream end. */
  readonly point: readonly number[];
}

/** The segments of lines of pipe: a new one begins where pipes part, where a row takes its water, and where another line goes on. */
export function lineSegments({ legs, trees }: SetLines, line: LineJob): LineSegments {
  const next = new Array<number>(legs.line.length).fill(0);
  for (const upstream of legs.upstream) if (upstream >= 0) next[upstream] = Number(next[upstream]) + 1;
  const isTee = new Array<boolean>(legs.line.length).fill(false);
  for (const tree of trees) {
    tree.lateral.forEach((lateral, node) => {
      const leg = legBefore(tree, node);
      if (lateral >= 0 && leg >= 0) isTee[leg] = true;
    });
  }
  const segments = {
    of: [] as number[],
    upstream: [] as number[],
    length_m: [] as number[],
    line: [] as number[],
    point: [] as number[],
  };
  legs.upstream.forEach((before, leg) => {
    const length_m = Number(line.length_m[Number(legs.point[leg])]);
    const last = before < 0 ? -1 : Number(segments.of[before]);
    const goesOn = before >= 0 && next[before] === 1 && isTee[before] === false && legs.line[before] === legs.line[leg];
    if (goesOn) {
      segments.of.push(last);
      segments.length_m[last] = Number(segments.length_m[last]) + length_m;
      segments.point[last] = Number(legs.point[leg]);
      return;
    }
    segments.of.push(segments.upstream.length);
    segments.upstream.push(last);
    segments.length_m.push(length_m);
    segments.line.push(Number(legs.line[leg]));
    segments.point.push(Number(legs.point[leg]));
  });
  return segments;
}

/** The leg that brings water to a node: its own, else that of the node before a regulator or a second row; -1 at the source. */
export function legBefore(tree: SetLines["trees"][number], node: number): number {
  let at = node;
  while (at > 0 && tree.leg[at] === -1) at = Number(tree.upstream[at]);
  return tree.leg[at] ?? -1;
}

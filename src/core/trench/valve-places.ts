import type { PipeSettings } from "../project/project.ts";
import type { Fitting } from "./line-fittings.ts";
import type { LineTree } from "./line-tree.ts";
import type { LinePoint } from "./low-points.ts";
import type { PipesOnLegs } from "./pipes-on-legs.ts";

interface OpenEnd {
  readonly line: number;
  readonly node: number;
  readonly pipe: PipeSettings;
}

/** A drain at the very end of a run stands in place of its cap; every other drain, and every air valve, takes a tee. */
export function valveFittings(
  ends: readonly OpenEnd[],
  lows: readonly LinePoint[],
  highs: readonly LinePoint[],
  tree: LineTree,
  lines: PipesOnLegs,
): readonly Fitting[] {
  const isAt = (end: OpenEnd) => (low: LinePoint) => low.isFitted && low.line === end.line && low.node === end.node;
  const within = [...lows.filter((low) => !ends.some((end) => isAt(end)(low))), ...highs].filter(
    ({ isFitted }) => isFitted,
  );
  return [
    ...within.flatMap(({ line, node }): readonly Fitting[] => {
      const pipe = pipeAt(node, tree, lines.get(line));
      return pipe === null ? [] : [{ kind: "valve-tee", pipe }];
    }),
    ...ends.filter((end) => !lows.some(isAt(end))).map(({ pipe }): Fitting => ({ kind: "pipe-cap", pipe })),
  ];
}

/** The pipe that comes in at a node, else one that goes out. */
function pipeAt(
  node: number,
  { pieces, to, leg }: LineTree,
  legs: ReadonlyMap<number, PipeSettings> | undefined,
): PipeSettings | null {
  const own = (pieces[node] ?? []).filter((piece) => legs?.has(Number(leg[piece])));
  const chosen = own.find((piece) => to[piece] === node) ?? own[0];
  return chosen === undefined ? null : (legs?.get(Number(leg[chosen])) ?? null);
}

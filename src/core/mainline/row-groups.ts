import type { NodeGroup } from "../graph/group-tree.ts";
import type { RouteGraph } from "./route-graph.ts";
import type { RouteRows } from "./route-job.ts";

/** Rows side by side that meet the water at the same end. */
export interface RowGroup {
  readonly rows: readonly number[];
  /** Ends that may meet the water: 0 the start, 1 the end; none where no trench can get to. */
  readonly ends: readonly (0 | 1)[];
}

/** The end that each group meets the water at; null where no trench can be. */
export type EndChoice = readonly (0 | 1 | null)[];

/** Every row by itself. */
export function singleRows(groups: readonly RowGroup[]): readonly RowGroup[] {
  return groups.flatMap(({ rows, ends }) => rows.map((row) => ({ rows: [row], ends })));
}

/** Runs of rows whose heads follow one another at every end that may meet the water. */
export function rowGroups(
  pin: RouteRows["pin"],
  graph: Pick<RouteGraph, "heads" | "chains" | "beside">,
): readonly RowGroup[] {
  const { heads, chains, beside } = graph;
  const endsOf = (row: number): readonly (0 | 1)[] => {
    const sides = [0, 1] as const;
    return sides.filter((side) => Number(heads[2 * row + side]) >= 0 && (pin[row] === 0 || pin[row] === side + 1));
  };
  const next = (row: number): number => {
    const ends = endsOf(row);
    const other = Number((ends[0] === 1 ? beside.end : beside.start)[row]);
    const goesOn = ends.every((side) => {
      const isBeside = Number((side === 0 ? beside.start : beside.end)[row]) === other;
      return isBeside && (chains[2 * row + side]?.length ?? 0) > 0;
    });
    return ends.length > 0 && other >= 0 && goesOn && endsOf(other).join() === ends.join() ? other : -1;
  };
  const follows = new Set<number>();
  for (let row = 0; row < pin.length; row++) follows.add(next(row));
  const groups: RowGroup[] = [];
  for (let row = 0; row < pin.length; row++) {
    if (follows.has(row)) continue;
    const rows: number[] = [];
    for (let at = row; at >= 0; at = next(at)) rows.push(at);
    groups.push({ rows, ends: endsOf(row) });
  }
  return groups;
}

/** The heads of a group at one end, and the links along them. */
export function headsOf(
  { rows }: RowGroup,
  side: 0 | 1,
  { heads, chains }: Pick<RouteGraph, "heads" | "chains">,
): NodeGroup {
  return {
    nodes: rows.map((row) => Number(heads[2 * row + side])),
    links: rows.slice(0, -1).flatMap((row) => chains[2 * row + side] ?? []),
  };
}

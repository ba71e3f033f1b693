import type { PipeSettings } from "../project/project.ts";
import type { PipeSpan, Trench } from "./trench.ts";

/** A pipe with the line that it belongs to: 0 the main line, else that of a set. */
export interface LinePipe {
  readonly line: number;
  readonly pipe: PipeSettings;
}

/** Stations of a branch with what lies side by side between them. */
export interface PipesBetween extends Omit<PipeSpan, "branch"> {
  readonly pipes: readonly LinePipe[];
}

/** What lies in a branch of the trench from its upstream end on, a new entry where that changes; lines in the order of their numbers. */
export function pipesAlong({ pipes }: Pick<Trench, "pipes">, branch: number): readonly PipesBetween[] {
  const spans = pipes.flatMap(({ line, pipe, spans: own }) =>
    own.filter((span) => span.branch === branch).map(({ from_m, to_m }) => ({ line, pipe, from_m, to_m })),
  );
  const stations_m = [...new Set(spans.flatMap(({ from_m, to_m }) => [from_m, to_m]))].sort((a, b) => a - b);
  return stations_m.slice(1).flatMap((to_m, i) => {
    const from_m = stations_m[i] ?? to_m;
    const here = spans.filter((span) => span.from_m <= from_m && span.to_m >= to_m);
    const own = here.map(({ line, pipe }) => ({ line, pipe })).sort((a, b) => a.line - b.line);
    return own.length === 0 ? [] : [{ from_m, to_m, pipes: own }];
  });
}

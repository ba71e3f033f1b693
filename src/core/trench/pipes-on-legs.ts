import type { PipeLine } from "../drip/watering.ts";
import type { Route } from "../mainline/route.ts";
import type { PipeSettings } from "../project/project.ts";
import type { LinePipe } from "./pipes-along.ts";

/** Which pipe a line has on the leg up to each point of the route, by line, in the order of their numbers. */
export type PipesOnLegs = ReadonlyMap<number, ReadonlyMap<number, PipeSettings>>;

/**
 * The pipes of every leg. Without chosen pipes the usual one lies everywhere. A leg that no chosen pipe lies on goes on with the pipe of the leg
 * before it (of a set's line before that of the main): something is dug there, and a row may be tapped off it.
 */
export function pipesOnLegs(
  { upstream }: Pick<Route, "upstream">,
  chosen: readonly PipeLine[],
  usual: PipeSettings,
): PipesOnLegs {
  const lines = new Map<number, Map<number, PipeSettings>>();
  const lay = (line: number, point: number, pipe: PipeSettings) => {
    const own = lines.get(line) ?? new Map<number, PipeSettings>();
    lines.set(line, own.set(point, pipe));
  };
  for (const { line, points, pipe } of chosen) for (const point of points) lay(line, point, pipe);
  for (let point = 1; point < upstream.length; point++) {
    if (linesOn(lines, point).length > 0) continue;
    const before = linesOn(lines, upstream[point] ?? 0).at(-1);
    if (before === undefined) lay(0, point, usual);
    else lay(before.line, point, before.pipe);
  }
  return new Map([...lines].sort(([a], [b]) => a - b));
}

/** The lines that lie on the leg up to a point, with their pipes, in the order of their numbers. */
export function linesOn(lines: PipesOnLegs, point: number): readonly LinePipe[] {
  const found: LinePipe[] = [];
  for (const [line, legs] of lines) {
    const pipe = legs.get(point);
    if (pipe !== undefined) found.push({ line, pipe });
  }
  return found.length > 1 ? found.sort((a, b) => a.line - b.line) : found;
}

/** The thickest of some pipes. */
export function thickest(pipes: readonly PipeSettings[], usual: PipeSettings): PipeSettings {
  return (
    pipes.reduce<PipeSettings | null>(
      (most, pipe) => (most === null || pipe.outside_mm > most.outside_mm ? pipe : most),
      null,
    ) ?? usual
  );
}

import type { Route } from "../mainline/route.ts";
import type { PipeSettings } from "../project/project.ts";
import { runsOf } from "./branches.ts";
import { linesOn, type PipesOnLegs, thickest } from "./pipes-on-legs.ts";

/** A run of one line without a junction of that line inside. */
export interface LaidRun {
  readonly line: number;
  /** Points of the route, from the upstream end. */
  readonly points: readonly number[];
  /** Pipe of each of its legs. */
  readonly pipes: readonly PipeSettings[];
  /** At the source; straight on where another line ends (a set's valve stands between); off a tee. */
  readonly begins: "source" | "straight" | "tee";
  /** The pipe that it goes on from: of the main valve, of the line before, of the tee. */
  readonly from: PipeSettings;
}

/** All runs, line by line. Where several begin at the source the first goes on from the main valve and the others leave by tees. */
export function laidRuns(
  route: Pick<Route, "xy" | "upstream">,
  lines: PipesOnLegs,
  usual: PipeSettings,
): readonly LaidRun[] {
  const head = headPipe(route, lines, usual);
  const runs: LaidRun[] = [];
  for (const [line, legs] of lines) {
    for (const points of runsOf(route, (point) => legs.has(point))) {
      const [first = 0] = points;
      const own = legs.get(first) ?? null;
      const before = linesOn(lines, first)[0] ?? null;
      runs.push({
        line,
        points,
        pipes: points.slice(1).flatMap((point) => legs.get(point) ?? []),
        begins:
          own !== null || isTaken(first, route, before === null ? null : lines.get(before.line), runs)
            ? "tee"
            : first === 0
              ? "source"
              : "straight",
        from: own ?? before?.pipe ?? head,
      });
    }
  }
  return runs;
}

/** The main valve's pipe: the thickest that leaves the source. */
export function headPipe({ upstream }: Pick<Route, "upstream">, lines: PipesOnLegs, usual: PipeSettings): PipeSettings {
  const first = [...upstream.keys()].filter((point) => upstream[point] === 0);
  return thickest(
    first.flatMap((point) => linesOn(lines, point).map(({ pipe }) => pipe)),
    usual,
  );
}

/** Does the line before go on there, or has another run that begins there gone straight on already? */
function isTaken(
  point: number,
  { upstream }: Pick<Route, "upstream">,
  before: ReadonlyMap<number, PipeSettings> | null | undefined,
  runs: readonly LaidRun[],
): boolean {
  const goesOn = [...(before?.keys() ?? [])].some((leg) => upstream[leg] === point);
  return goesOn || runs.some(({ points, begins }) => begins !== "tee" && points[0] === point);
}

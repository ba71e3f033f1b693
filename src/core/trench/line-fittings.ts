import type { Route } from "../mainline/route.ts";
import type { PipeSettings } from "../project/project.ts";
import { turnsOf } from "./bends.ts";
import { elbowsFor, flexed_deg } from "./elbows.ts";
import type { LaidRun } from "./laid-runs.ts";
import type { ElbowAngle } from "./trench.ts";

/** A fitting of the line, by the pipe it is for. */
export type Fitting =
  | { readonly kind: "branch-tee" | "valve-tee" | "main-valve" | "set-valve" | "pipe-cap"; readonly pipe: PipeSettings }
  | { readonly kind: "elbow"; readonly pipe: PipeSettings; readonly angle_deg: ElbowAngle }
  /** From the wider to the narrower. */
  | { readonly kind: "reducer"; readonly pipe: PipeSettings; readonly to: PipeSettings };

/** Tees where lines part, elbows and reducers along the runs. */
export function runFittings(route: Pick<Route, "xy">, runs: readonly LaidRun[]): readonly Fitting[] {
  const tees = runs.flatMap(({ begins, from }): readonly Fitting[] =>
    begins === "tee" ? [{ kind: "branch-tee", pipe: from }] : [],
  );
  const elbows = turnsOf(route, runs).flatMap(({ run, at, angle_deg }): readonly Fitting[] => {
    const pipe = runs[run]?.pipes[Math.max(0, at - 1)];
    if (pipe === undefined) return [];
    return elbowsFor(angle_deg, flexed_deg(pipe)).map((angle) => ({ kind: "elbow", pipe, angle_deg: angle }));
  });
  return [...tees, ...elbows, ...runs.flatMap(reducers)];
}

/** A reducer wherever the next leg's pipe is another one, and where a run is not of the size that it goes on from. */
function reducers({ from, pipes }: LaidRun): readonly Fitting[] {
  return pipes.flatMap((pipe, i): readonly Fitting[] => {
    const before = i === 0 ? from : (pipes[i - 1] ?? from);
    if (before.size === pipe.size) return [];
    const [wide, narrow] = before.outside_mm >= pipe.outside_mm ? [before, pipe] : [pipe, before];
    return [{ kind: "reducer", pipe: wide, to: narrow }];
  });
}

/** Where the line of a set begins stands its valve. */
export function setValves(runs: readonly LaidRun[]): readonly Fitting[] {
  return firstRuns(runs).flatMap(({ line, pipes: [pipe] }): readonly Fitting[] =>
    line > 0 && pipe !== undefined ? [{ kind: "set-valve", pipe }] : [],
  );
}

/** The run that each line begins with. */
export function firstRuns(runs: readonly LaidRun[]): readonly LaidRun[] {
  return runs.filter((run, i) => runs.findIndex(({ line }) => line === run.line) === i);
}

/** The ends of runs that no other goes straight on from. */
export function openEnds(runs: readonly LaidRun[]): readonly {
  readonly line: number;
  readonly point: number;
  readonly pipe: PipeSettings;
}[] {
  return runs.flatMap(({ line, points, pipes }) => {
    const [point, pipe] = [points.at(-1), pipes.at(-1)];
    const goesOn = runs.some((other) => other.begins === "straight" && other.points[0] === point);
    return point === undefined || pipe === undefined || goesOn ? [] : [{ line, point, pipe }];
  });
}

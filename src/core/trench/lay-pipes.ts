import type { PipeLine } from "../drip/watering.ts";
import type { Route } from "../mainline/route.ts";
import type { PipeSettings } from "../project/project.ts";
import { headPipe, type LaidRun, laidRuns } from "./laid-runs.ts";
import { linesOn, type PipesOnLegs, pipesOnLegs, thickest } from "./pipes-on-legs.ts";
import { abreast_m } from "./trench-width.ts";

/** All that is laid along a route, before it is known how deep. */
export interface Laid {
  readonly lines: PipesOnLegs;
  readonly runs: readonly LaidRun[];
  /** Of the main valve. */
  readonly head: PipeSettings;
  /** Outside diameters of the pipes on the leg up to a point, line by line. */
  on_mm(point: number): readonly number[];
  /** The pipe that the row at a point is tapped off. */
  tapped(point: number): PipeSettings;
  readonly abreast_mm: readonly number[];
  readonly thickest_mm: number;
}

/** The pipes of a watering along the route; without any the usual one everywhere. */
export function layPipes(
  route: Pick<Route, "xy" | "upstream">,
  chosen: readonly PipeLine[],
  usual: PipeSettings,
): Laid {
  const lines = pipesOnLegs(route, chosen, usual);
  const head = headPipe(route, lines, usual);
  const claimed = new Map(chosen.flatMap(({ line, tees }) => tees.map((point) => [point, line] as const)));
  const legs = [...route.upstream.keys()].slice(1);
  const on_mm = (point: number) => linesOn(lines, point).map(({ pipe }) => pipe.outside_mm);
  const abreast_mm = legs
    .map(on_mm)
    .reduce(
      (most, each) => (abreast_m(each) > abreast_m(most) ? each : most),
      legs.length === 0 ? [usual.outside_mm] : [],
    );
  return {
    lines,
    runs: laidRuns(route, lines, usual),
    head,
    on_mm,
    tapped: (point) => {
      const own = linesOn(lines, point);
      return (own.find(({ line }) => line === claimed.get(point)) ?? own.at(-1))?.pipe ?? head;
    },
    abreast_mm,
    thickest_mm: thickest(
      [...lines.values()].flatMap((own) => [...own.values()]),
      usual,
    ).outside_mm,
  };
}

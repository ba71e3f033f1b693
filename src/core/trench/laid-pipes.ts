import type { PipeSettings } from "../project/project.ts";
import { branchPipes } from "./branch-pipes.ts";
import type { LaidRun } from "./laid-runs.ts";
import type { BranchPipe, LaidPipe, PipeSpan, Profile } from "./trench.ts";

interface Stretch {
  readonly line: number;
  readonly pipe: PipeSettings;
  readonly points: number[];
}

/**
 * The pipes of the runs, a piece of one size each, in their order: where they lie on the branches of the trench, how long they are along the
 * ground, and how they are laid. Sticks are laid end to end within such a piece; coils of one size go on from piece to piece.
 */
export function laidPipes(runs: readonly LaidRun[], profiles: readonly Profile[]): readonly LaidPipe[] {
  const legs = legPlaces(profiles);
  const pieces = runs.flatMap(stretchesOf).map((stretch) => ({ ...stretch, ...spansOf(stretch.points, legs) }));
  const cuts = new Map<unknown, BranchPipe>();
  for (const size of new Set(pieces.map(({ pipe }) => pipe.size))) {
    const own = pieces.filter(({ pipe }) => pipe.size === size);
    const [first] = own;
    if (first === undefined) continue;
    const cut = branchPipes(
      own.map(({ length_m }) => length_m),
      first.pipe,
    );
    own.forEach((piece, i) => {
      const one = cut[i];
      if (one !== undefined) cuts.set(piece, one);
    });
  }
  return pieces.flatMap((piece) => {
    const cut = cuts.get(piece);
    return cut === undefined ? [] : [{ line: piece.line, pipe: piece.pipe, spans: piece.spans, ...cut }];
  });
}

/** Legs of a run that follow each other with one pipe, by their downstream points. */
function stretchesOf({ line, points, pipes }: LaidRun): readonly Stretch[] {
  const found: Stretch[] = [];
  pipes.forEach((pipe, i) => {
    const point = points[i + 1] ?? 0;
    const last = found.at(-1);
    if (last?.pipe.size === pipe.size) last.points.push(point);
    else found.push({ line, pipe, points: [point] });
  });
  return found;
}

interface LegPlace {
  readonly branch: number;
  /** Horizontal and along the ground, at both ends. */
  readonly from_m: number;
  readonly to_m: number;
  readonly fromSlope_m: number;
  readonly toSlope_m: number;
}

/** Where the leg up to each point of the route lies on the branches. */
function legPlaces(profiles: readonly Profile[]): ReadonlyMap<number, LegPlace> {
  const legs = new Map<number, LegPlace>();
  profiles.forEach(({ point, station_m, slopeStation_m }, branch) => {
    let from = 0;
    point.forEach((each, i) => {
      if (each < 0) return;
      if (i > 0)
        legs.set(each, {
          branch,
          from_m: station_m[from] ?? 0,
          to_m: station_m[i] ?? 0,
          fromSlope_m: slopeStation_m[from] ?? 0,
          toSlope_m: slopeStation_m[i] ?? 0,
        });
      from = i;
    });
  });
  return legs;
}

/** Legs that follow each other on one branch are one span. */
function spansOf(points: readonly number[], legs: ReadonlyMap<number, LegPlace>) {
  const found: { branch: number; from_m: number; to_m: number; fromSlope_m: number; toSlope_m: number }[] = [];
  for (const point of points) {
    const leg = legs.get(point);
    if (leg === undefined) continue;
    const last = found.at(-1);
    if (last !== undefined && last.branch === leg.branch && last.to_m === leg.from_m) {
      last.to_m = leg.to_m;
      last.toSlope_m = leg.toSlope_m;
    } else found.push({ ...leg });
  }
  return {
    spans: found.map(({ branch, from_m, to_m }): PipeSpan => ({ branch, from_m, to_m })),
    length_m: found.reduce((sum_m, { fromSlope_m, toSlope_m }) => sum_m + (toSlope_m - fromSlope_m), 0),
  };
}

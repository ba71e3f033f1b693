import { legLengths_m } from "../mainline/route.ts";
import type { Mainline } from "../mainline/water-end.ts";
import type { FeatureKey } from "../project/project.ts";
import type { Row } from "../rows/rows.ts";
import { type LinePipe, pipesAlong } from "./pipes-along.ts";
import type { Branch, ElbowAngle, Trench } from "./trench.ts";

/** Something that is met along a branch of the trench, at its station. */
export type TrenchMark =
  | { readonly kind: "source"; readonly station_m: number; readonly name: string | null }
  /** Where the branch leaves another. */
  | { readonly kind: "from"; readonly station_m: number; readonly branch: string; readonly at_m: number }
  | { readonly kind: "branch"; readonly station_m: number; readonly branch: string }
  | { readonly kind: "tee"; readonly station_m: number; readonly row: string; readonly index: number }
  | {
      readonly kind: "bend";
      readonly station_m: number;
      readonly angle_deg: number;
      readonly elbows: readonly ElbowAngle[];
    }
  | {
      readonly kind: "crossing";
      readonly station_m: number;
      readonly to_m: number;
      readonly feature: FeatureKey;
      readonly name: string | null;
    }
  | {
      readonly kind: "low" | "high";
      readonly station_m: number;
      readonly by_m: number;
      readonly trapped_l: number;
      readonly isFitted: boolean;
      /** Valves, a pipe each. */
      readonly fitted: number;
      readonly pond_m: number;
    }
  /** What lies in the trench from there on, where the sizes are chosen. */
  | { readonly kind: "pipes"; readonly station_m: number; readonly pipes: readonly LinePipe[] }
  /** Where the line of a set begins. */
  | { readonly kind: "valve"; readonly station_m: number; readonly set: number }
  | { readonly kind: "end"; readonly station_m: number };

/** What is met along each branch, in the order of its stations; nothing without a route. Gives no findings. */
export function trenchMarks(
  trench: Trench,
  { route, job }: Pick<Mainline, "route" | "job">,
  rows: readonly Row[],
): readonly (readonly TrenchMark[])[] {
  if (route === null || job === null) return trench.branches.map(() => []);
  const legs_m = legLengths_m(route);
  const stations = trench.branches.map((branch) => stationsOf(branch, legs_m));
  const bends = new Map(trench.bends.map((bend) => [bend.point, bend]));
  return trench.branches.map((branch, b) => {
    const own = stations[b] ?? [];
    const length_m = own.at(-1) ?? 0;
    const first = branch.points[0] ?? 0;
    const marks: TrenchMark[] = [
      first === 0
        ? { kind: "source", station_m: 0, name: job.sources[route.source]?.name ?? null }
        : { kind: "from", station_m: 0, ...whereFrom(first, b, trench, stations) },
      ...branch.points.flatMap((point, i): readonly TrenchMark[] => {
        const station_m = own[i] ?? 0;
        const row = rows[route.row[point] ?? -1];
        const crossed = job.barriers.features[route.crossing[point] ?? -1];
        const bend = bends.get(point);
        return [
          ...(crossed === undefined || i === 0
            ? []
            : [
                {
                  kind: "crossing" as const,
                  station_m: own[i - 1] ?? 0,
                  to_m: station_m,
                  feature: crossed.key,
                  name: crossed.name,
                },
              ]),
          // The tee of a point that branches share stands on the one that comes in.
          ...(row === undefined || (i === 0 && first !== 0)
            ? []
            : [{ kind: "tee" as const, station_m, row: row.id, index: route.row[point] ?? -1 }]),
          ...trench.branches.flatMap((other, o) =>
            o === b || i === 0 || other.points[0] !== point
              ? []
              : [{ kind: "branch" as const, station_m, branch: other.name }],
          ),
          // Where a branch begins it is a tee that turns it.
          ...(bend === undefined || i === 0
            ? []
            : [{ kind: "bend" as const, station_m, angle_deg: bend.angle_deg, elbows: bend.elbows }]),
        ];
      }),
      ...setValves(trench, b),
      ...pipeMarks(trench, b),
      ...ofKind("low", trench.lows, b),
      ...ofKind("high", trench.highs, b),
      { kind: "end", station_m: length_m },
    ];
    return marks
      .map((mark, order) => ({ mark, order }))
      .sort((a, c) => a.mark.station_m - c.mark.station_m || a.order - c.order)
      .map(({ mark }) => mark);
  });
}

/** Horizontal distance of each point of a branch from its first. */
function stationsOf({ points }: Branch, legs_m: Float64Array): readonly number[] {
  let station_m = 0;
  return points.map((point, i) => {
    station_m += i === 0 ? 0 : (legs_m[point] ?? 0);
    return station_m;
  });
}

function whereFrom(
  point: number,
  self: number,
  { branches }: Trench,
  stations: readonly (readonly number[])[],
): { readonly branch: string; readonly at_m: number } {
  const of = branches.findIndex((each, o) => o !== self && each.points.indexOf(point) > 0);
  const at = branches[of]?.points.indexOf(point) ?? 0;
  return { branch: branches[of]?.name ?? "", at_m: stations[of]?.[at] ?? 0 };
}

function ofKind(kind: "low" | "high", points: Trench["lows"], branch: number): readonly TrenchMark[] {
  return points
    .filter((each) => each.branch === branch)
    .map(({ station_m, by_m, trapped_l, isFitted, fitted, pond_m }) => {
      return { kind, station_m, by_m, trapped_l, isFitted, fitted, pond_m };
    });
}

function setValves({ pipes }: Trench, branch: number): readonly TrenchMark[] {
  const sets = [...new Set(pipes.map(({ line }) => line))].filter((line) => line > 0);
  return sets.flatMap((set): readonly TrenchMark[] => {
    const first = pipes.find(({ line }) => line === set)?.spans[0];
    return first?.branch === branch ? [{ kind: "valve", station_m: first.from_m, set }] : [];
  });
}

function pipeMarks(trench: Trench, branch: number): readonly TrenchMark[] {
  if (!trench.isSized) return [];
  return pipesAlong(trench, branch).map(({ from_m, pipes }) => ({ kind: "pipes", station_m: from_m, pipes }));
}

import { type Account, account, commonPractice, geometry, input, remark } from "../account.ts";
import { quantity, say } from "../finding.ts";
import type { RowSettings } from "../project/project.ts";
import type { Positions, Row, Rows } from "./rows.ts";

/** How the length of one row came about, m. */
export function rowLengthAccount(row: Row, settings: RowSettings): Account {
  const [east_m, north_m] = [row.end[0] - row.start[0], row.end[1] - row.start[1]];
  if (Math.abs(Math.hypot(east_m, north_m) - row.length_m) > taped_m) {
    return account(
      {
        formula: say`As it was taped: the row stands already, and the tape goes before the map.`,
        inputs: [
          input("Taped", "length", row.length_m),
          remark("On the map", say`${quantity("length", Math.hypot(east_m, north_m))}`),
        ],
        source: "the project file",
      },
      (length_m) => Number(length_m),
    );
  }
  return account(
    {
      formula: say`Straight from end post to end post: the root of both distances squared and added.`,
      inputs: [
        input("Towards grid east", "length", Math.abs(east_m)),
        input("Towards grid north", "length", Math.abs(north_m)),
        ...(row.given === null
          ? leftOver(row, settings)
          : [remark("The row", "stands already; its posts are in the project file")]),
      ],
      source: geometry,
    },
    (across_m, along_m) => Math.hypot(Number(across_m), Number(along_m)),
  );
}

/** How the steepest slope along or across one row came about; null on flat ground and where heights are not known. */
export function rowSlopeAccount(row: Row, way: "along" | "across", settings: RowSettings): Account | null {
  const slope_ratio = way === "along" ? row.slopeAlong_ratio : row.slopeAcross_ratio;
  if (slope_ratio === null) return null;
  const plan_m = Math.hypot(row.end[0] - row.start[0], row.end[1] - row.start[1]);
  const over_m = plan_m / Math.max(1, Math.round(plan_m / (settings.bay_vines * settings.vineSpacing_m)));
  return account(
    {
      formula: say`Difference of height over about a post spacing, ${way === "along" ? "along the row" : "square to the row"}, where it is steepest.`,
      inputs: [
        input(
          way === "along" ? "Rise towards the end" : "Rise to the right, looking to the end",
          "length",
          slope_ratio * over_m,
        ),
        input("Over", "length", over_m),
        ...(row.aspect_deg === null
          ? []
          : [remark("The ground falls towards", say`${quantity("angle", row.aspect_deg)}`)]),
      ],
      source: `${geometry}; heights as given`,
    },
    (rise_m, along_m) => Number(rise_m) / Number(along_m),
  );
}

/** How many vines one row holds. */
export function rowVinesAccount(rows: Rows, i: number, settings: RowSettings): Account {
  const stations = stationsOf(rows.vines, i);
  const { vineSpacing_m } = settings;
  const [first, last] = [stations[0], stations.at(-1)];
  if (first === undefined || last === undefined) {
    return account(
      {
        formula: say`No vine: the row is shorter than an end gap at either end.`,
        inputs: [
          remark("Row length", say`${quantity("length", rows.rows[i]?.length_m ?? 0)}`),
          remark("End post to first vine", say`${quantity("length", settings.endGap_m)}`),
        ],
        source: geometry,
      },
      () => 0,
    );
  }
  const skipped = leftOut(stations, vineSpacing_m);
  return account(
    {
      formula: say`Whole vine spacings between the first and the last vine, and one more${skipped > 0 ? ", less the vines left out where wires run past something" : ""}.`,
      inputs: [
        input("First vine at", "length", first),
        input("Last vine at", "length", last),
        input("Vine spacing", "length", vineSpacing_m),
        ...(skipped > 0 ? [input("Left out", "count", skipped)] : []),
      ],
      source: `${geometry}; end gap ${commonPractice}`,
    },
    (from_m, to_m, spacing_m, missing = 0) =>
      Math.round((Number(to_m) - Number(from_m)) / Number(spacing_m)) + 1 - missing,
  );
}

/** How many line posts one row has. */
export function rowLinePostsAccount(rows: Rows, i: number, settings: RowSettings): Account {
  const posts = stationsOf(rows.linePosts, i);
  const length_m = rows.rows[i]?.length_m ?? 0;
  const whole_m = settings.bay_vines * settings.vineSpacing_m;
  const isEqual = settings.bays === "equal";
  const bay_m = isEqual ? length_m / Math.max(1, Math.round(length_m / whole_m)) : whole_m;
  const [first, last] = [posts[0], posts.at(-1)];
  const source = commonPractice;
  if (first === undefined || last === undefined) {
    return account(
      {
        formula: say`None: the whole row is one bay.`,
        inputs: [
          remark("Row length", say`${quantity("length", length_m)}`),
          remark("Bay", say`${settings.bay_vines} vines, ${quantity("length", bay_m)}`),
        ],
        source,
      },
      () => 0,
    );
  }
  const ahead = posts.map((at, n) => (n === 0 ? 0 : (at - Number(posts[n - 1])) / bay_m));
  if (ahead.slice(1).some((bays) => Math.abs(bays - 1) > dust)) {
    return account(
      {
        formula: say`Posts stand half-way between two vines, a bay apart; near a gap they move to the nearest free place. Those that found one are counted.`,
        inputs: [input("Posts that stand", "count", posts.length), remark("Bay", say`${settings.bay_vines} vines`)],
        source,
      },
      (count) => Number(count),
    );
  }
  return account(
    {
      formula: isEqual
        ? say`Bays of equal length, one post fewer than bays: from the first post to the last in bays, and one more.`
        : say`From the first post to the last in whole bays, and one more. Posts stand half-way between two vines; the bays at both ends are the shorter ones.`,
      inputs: [
        input("First post at", "length", first),
        input("Last post at", "length", last),
        input("Bay", "length", bay_m),
        remark("Vines in a bay", String(settings.bay_vines)),
      ],
      source,
    },
    (from_m, to_m, each_m) => Math.round((Number(to_m) - Number(from_m)) / Number(each_m)) + 1,
  );
}

/** Less than tape and map agree to when they are the same number. */
const taped_m = 1e-6;
const dust = 1e-6;

const ends = { all: "at the last millimetre", vines: "at whole vine spacings", bays: "at whole bays" } as const;

function leftOver(row: Row, settings: RowSettings) {
  return [
    remark("Rows end", ends[settings.rowEnd]),
    remark(
      "Ground left over",
      say`${quantity("length", row.startLeftover_m)} at the start, ${quantity("length", row.endLeftover_m)} at the end`,
    ),
  ];
}

function stationsOf({ offsets, station_m }: Positions, i: number): readonly number[] {
  return [...station_m.slice(offsets[i] ?? 0, offsets[i + 1] ?? 0)];
}

/** Vines missing on the spacing's grid between the first and the last. */
function leftOut(stations: readonly number[], spacing_m: number): number {
  return stations.reduce(
    (missing, at, n) => (n === 0 ? missing : missing + Math.round((at - Number(stations[n - 1])) / spacing_m) - 1),
    0,
  );
}

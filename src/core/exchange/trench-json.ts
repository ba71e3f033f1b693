import type { Plan } from "../plan.ts";
import { planePoint } from "../plane/coordinate.ts";
import { markInWords } from "../trench/mark-in-words.ts";
import { pipesAlong } from "../trench/pipes-along.ts";
import type { Earth, LaidPipe, ProfilePoint, Thrust, TrenchPart } from "../trench/trench.ts";
import { text, type UnitSystem } from "../units.ts";
import { known } from "./known.ts";
import { placed } from "./positions.ts";
import { position } from "./rounding.ts";
import { branchPlaces, stationAt, teeOf } from "./trench-places.ts";

type Place = readonly [lon: number, lat: number];

/** Where the main line runs; no branches while there is no route. */
export interface MainlineJson {
  /** Feature the line begins at. */
  readonly source: string | null;
  readonly route: readonly {
    readonly branch: string;
    readonly positions: readonly Place[];
    readonly length_m: number;
    readonly groundLength_m: number | null;
  }[];
  readonly length_m: number;
  readonly groundLength_m: number | null;
  readonly tees: readonly {
    readonly row: string;
    readonly branch: string;
    readonly station_m: number;
    readonly at: Place;
    /** From the tee to the row's end post, where it lies outside of it. */
    readonly lead_m: number;
  }[];
  readonly crossings: readonly {
    readonly feature: string;
    readonly name: string | null;
    readonly branch: string;
    readonly from_m: number;
    readonly to_m: number;
  }[];
  /** Ids of the rows that no trench can get to. */
  readonly unreached: readonly string[];
}

/** The trench of the main line; no branches and no earth while there is no route. */
export interface TrenchJson {
  readonly cover_m: number | null;
  readonly branches: readonly {
    readonly branch: string;
    readonly stations: readonly StationJson[];
    readonly pipe: {
      readonly length_m: number;
      readonly sticks: number;
      readonly joints: number;
      readonly waste_m: number;
    } | null;
    /** What lies side by side, from station to station. */
    readonly pipes: readonly {
      readonly from_m: number;
      readonly to_m: number;
      readonly lines: readonly { readonly line: number; readonly size: string }[];
    }[];
  }[];
  /** Every pipe of one size of one line, laid end to end; line 0 is the main line, others those of the sets. */
  readonly pipes: readonly {
    readonly line: number;
    readonly size: string;
    readonly outside_mm: number;
    readonly inside_mm: number;
    readonly length_m: number;
    readonly sticks: number;
    readonly joints: number;
    readonly waste_m: number;
  }[];
  readonly lows: readonly PointJson[];
  readonly highs: readonly PointJson[];
  readonly bends: readonly { readonly at: Place; readonly angle_deg: number; readonly elbows_deg: readonly number[] }[];
  readonly sleeves: readonly {
    readonly feature: string;
    readonly name: string | null;
    readonly at: Place;
    readonly length_m: number;
    /** Pipes that go through, each in a sleeve of its own. */
    readonly pipes: number;
  }[];
  readonly thrusts: readonly Omit<Thrust, "isBlocked">[];
  readonly conflicts: readonly {
    readonly row: string | null;
    readonly end: "start" | "end";
    readonly what: "post" | "anchor" | "turning";
    readonly distance_m: number;
    readonly least_m: number;
    readonly at: Place;
  }[];
  readonly parts: readonly (Omit<TrenchPart, "spec" | "perRow" | "spare" | "item" | "pieces_m"> & {
    readonly spec: string;
  })[];
  readonly earth: (Omit<Earth, "deepestAt"> & { readonly deepestAt: Place }) | null;
}

interface StationJson {
  readonly station_m: number;
  readonly slopeStation_m: number | null;
  readonly at: Place;
  readonly ground_m: number | null;
  readonly pipe_m: number | null;
  readonly bottom_m: number | null;
  readonly depth_m: number;
  readonly row: string | null;
  readonly met: readonly string[];
}

interface PointJson {
  readonly branch: string;
  readonly station_m: number;
  readonly at: Place;
  readonly height_m: number | null;
  readonly by_m: number;
  readonly trapped_l: number;
  readonly fitted: boolean;
  /** Valves there, a pipe each. */
  readonly valves: number;
}

export const noMainline: MainlineJson = {
  source: null,
  route: [],
  length_m: 0,
  groundLength_m: null,
  tees: [],
  crossings: [],
  unreached: [],
};

export const noTrench: TrenchJson = {
  cover_m: null,
  branches: [],
  pipes: [],
  lows: [],
  highs: [],
  bends: [],
  sleeves: [],
  thrusts: [],
  conflicts: [],
  parts: [],
  earth: null,
};

/** Branches as positions (9 decimals), what every row is fed by, what is crossed and who is not reached. */
export function mainlineJson(plan: Plan): MainlineJson {
  const { mainline, trench, rows } = plan;
  const route = mainline?.route ?? null;
  if (mainline === null || route === null) return noMainline;
  const branches = branchPlaces(plan);
  return {
    source: mainline.job?.sources[route.source]?.feature ?? null,
    route: branches.map(({ name, line, length_m, groundLength_m }) => ({
      branch: name,
      positions: line.map((at) => position(at, decimals)),
      length_m,
      groundLength_m,
    })),
    length_m: route.length_m,
    groundLength_m: trench?.groundLength_m ?? null,
    tees: branches.flatMap(({ name, stations }) =>
      stations.flatMap((station) =>
        station.marks.flatMap((mark) =>
          mark.kind === "tee"
            ? [
                {
                  row: mark.row,
                  branch: name,
                  station_m: mark.station_m,
                  at: position(stationAt(plan, station), decimals),
                  lead_m: trench?.leads_m[mark.index] ?? 0,
                },
              ]
            : [],
        ),
      ),
    ),
    crossings: branches.flatMap(({ name, marks }) =>
      marks.flatMap((mark) =>
        mark.kind === "crossing"
          ? [{ feature: mark.feature, name: mark.name, branch: name, from_m: mark.station_m, to_m: mark.to_m }]
          : [],
      ),
    ),
    unreached: route.unreached.flatMap((row) => rows?.rows[row]?.id ?? []),
  };
}

/** 9 decimals of a degree are 0.1 mm, as for the ends of rows. */
const decimals = 9;

/** Profile, volumes, fittings and what is in the way, with words in the units asked for. */
export function trenchJson(plan: Plan, units: UnitSystem): TrenchJson {
  const { trench, rows } = plan;
  if (trench === null) return noTrench;
  const at = ([x, y]: readonly [number, number]): Place => position(placed(plan, planePoint(x, y)), decimals);
  const point = ({ branch, station_m, xy, height_m, by_m, trapped_l, isFitted, fitted }: ProfilePoint): PointJson => ({
    branch: trench.branches[branch]?.name ?? "",
    station_m,
    at: at(xy),
    height_m: known(height_m),
    by_m,
    trapped_l,
    fitted: isFitted,
    valves: fitted,
  });
  return {
    cover_m: trench.cover_m,
    branches: branchPlaces(plan).map(({ name, stations }, b) => ({
      branch: name,
      stations: stations.map((station) => ({
        station_m: station.station_m,
        slopeStation_m: known(station.slopeStation_m),
        at: position(stationAt(plan, station), decimals),
        ground_m: known(station.ground_m),
        pipe_m: known(station.pipe_m),
        bottom_m: known(station.bottom_m),
        depth_m: station.depth_m,
        row: teeOf(station.marks),
        met: station.marks.map((mark) => text(markInWords(mark), units)),
      })),
      pipe: laidFrom(trench.pipes.filter(({ spans }) => spans[0]?.branch === b)),
      pipes: pipesAlong(trench, b).map(({ from_m, to_m, pipes }) => ({
        from_m,
        to_m,
        lines: pipes.map(({ line, pipe }) => ({ line, size: pipe.size })),
      })),
    })),
    pipes: trench.pipes.map(({ line, pipe: { size, outside_mm, inside_mm }, length_m, sticks, joints, waste_m }) => {
      return { line, size, outside_mm, inside_mm, length_m, sticks, joints, waste_m };
    }),
    lows: trench.lows.map(point),
    highs: trench.highs.map(point),
    bends: trench.bends.map(({ xy, angle_deg, elbows }) => ({ at: at(xy), angle_deg, elbows_deg: elbows })),
    sleeves: trench.sleeves.map(({ feature, name, xy, length_m, outside_mm }) => {
      return { feature, name, at: at(xy), length_m, pipes: outside_mm.length };
    }),
    thrusts: trench.thrusts.map(({ isBlocked: _, ...thrust }) => thrust),
    conflicts: trench.conflicts.map(({ row, end, what, distance_m, least_m, xy }) => ({
      row: rows?.rows[row]?.id ?? null,
      end,
      what,
      distance_m,
      least_m,
      at: at(xy),
    })),
    parts: trench.parts.map(({ kind, article, spec, unit, quantity, purpose }) => ({
      kind,
      article,
      spec: text(spec, units),
      unit,
      quantity,
      purpose,
    })),
    earth: { ...trench.earth, deepestAt: at(trench.earth.deepestAt) },
  };
}

/** The pipes that begin on a branch, together; null for none. */
function laidFrom(pipes: readonly LaidPipe[]): TrenchJson["branches"][number]["pipe"] {
  if (pipes.length === 0) return null;
  const sum = (of: (pipe: LaidPipe) => number) => pipes.reduce((total, pipe) => total + of(pipe), 0);
  return {
    length_m: sum(({ length_m }) => length_m),
    sticks: sum(({ sticks }) => sticks),
    joints: sum(({ joints }) => joints),
    waste_m: sum(({ waste_m }) => waste_m),
  };
}

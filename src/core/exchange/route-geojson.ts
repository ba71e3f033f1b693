import type { Feature, FeatureCollection, LineString, MultiLineString, Point } from "geojson";
import type { Plan } from "../plan.ts";
import type { TrenchMark } from "../trench/trench-marks.ts";
import type { TrenchStation } from "../trench/trench-stations.ts";
import { known } from "./known.ts";
import { lineGeometry } from "./line-geometry.ts";
import { millimetres, position, rounded } from "./rounding.ts";
import { sketchProperty } from "./sketch.ts";
import { type BranchPlaces, branchPlaces, stationAt } from "./trench-places.ts";

/**
 * The main line as GeoJSON (RFC 7946), 8 decimals: a line a branch, from its upstream end, and a point for everything that is met along it: row
 * tees, branches, bends, low and high points, both ends of crossings; where the sizes of pipes are chosen, a line a pipe too. Lengths in properties are rounded to the millimetre; a line over the
 * antimeridian is cut there. Empty without a route.
 */
export function routeGeoJson(plan: Plan): FeatureCollection<LineString | MultiLineString | Point> {
  const branches = branchPlaces(plan);
  const sketch = sketchProperty(plan);
  return {
    type: "FeatureCollection",
    features: [
      ...branches.map(
        ({ name, line, length_m, groundLength_m }): Feature<LineString | MultiLineString> => ({
          type: "Feature",
          id: `main-line-${name}`,
          geometry: lineGeometry(line),
          properties: {
            role: "main-line",
            branch: name,
            length_m: millimetres(length_m),
            groundLength_m: groundLength_m === null ? null : millimetres(groundLength_m),
            ...sketch,
          },
        }),
      ),
      ...branches.flatMap((branch) => pipesOn(branch, sketch)),
      ...branches.flatMap((branch) => metOn(branch, plan, sketch)),
    ],
  };
}

/** Every pipe as a line, branch by branch, where their sizes are chosen; pipes side by side lie on one line. */
function pipesOn(
  { name, pipes }: BranchPlaces,
  sketch: ReturnType<typeof sketchProperty>,
): readonly Feature<LineString | MultiLineString>[] {
  return pipes.flatMap(({ from_m, to_m, line, pipes: abreast }, i) =>
    abreast.map(
      ({ line: of, pipe }): Feature<LineString | MultiLineString> => ({
        type: "Feature",
        id: `pipe-${name}-${i + 1}-${of}`,
        geometry: lineGeometry(line),
        properties: {
          role: "pipe",
          branch: name,
          line: lineName(of),
          size: pipe.size,
          outside_mm: pipe.outside_mm,
          inside_mm: pipe.inside_mm,
          from_m: millimetres(from_m),
          to_m: millimetres(to_m),
          ...sketch,
        },
      }),
    ),
  );
}

function lineName(line: number): string {
  return line === 0 ? "main" : `set ${line}`;
}

/** Every station of the trench as a point: where to peg, and how deep to dig there. */
export function stationsGeoJson(plan: Plan): FeatureCollection<Point> {
  const sketch = sketchProperty(plan);
  const features = branchPlaces(plan).flatMap(({ name, stations }) =>
    stations.map(
      (station, i): Feature<Point> => ({
        type: "Feature",
        id: `station-${name}-${i + 1}`,
        geometry: { type: "Point", coordinates: position(stationAt(plan, station)) },
        properties: { role: "trench-station", branch: name, number: i + 1, ...heights(station), ...sketch },
      }),
    ),
  );
  return { type: "FeatureCollection", features };
}

function heights(station: TrenchStation) {
  const { station_m, slopeStation_m, ground_m, pipe_m, bottom_m, depth_m, marks } = station;
  return {
    station_m: millimetres(station_m),
    slopeStation_m: known(slopeStation_m, millimetres),
    ground_m: known(ground_m, millimetres),
    pipe_m: known(pipe_m, millimetres),
    bottom_m: known(bottom_m, millimetres),
    depth_m: millimetres(depth_m),
    row: teeOf(marks),
  };
}

/** The row that has its tee at a station, or null. */
export function teeOf(marks: readonly TrenchMark[]): string | null {
  return marks.flatMap((mark) => (mark.kind === "tee" ? [mark.row] : []))[0] ?? null;
}

function metOn(
  { name, stations }: BranchPlaces,
  plan: Plan,
  sketch: ReturnType<typeof sketchProperty>,
): readonly Feature<Point>[] {
  const counts = new Map<string, number>();
  return stations.flatMap((station) =>
    station.marks.map((mark): Feature<Point> => {
      const number = (counts.get(mark.kind) ?? 0) + 1;
      counts.set(mark.kind, number);
      return {
        type: "Feature",
        id: `${roles[mark.kind]}-${name}-${number}`,
        geometry: { type: "Point", coordinates: position(stationAt(plan, station)) },
        properties: {
          role: roles[mark.kind],
          branch: name,
          ...heights(station),
          ...told(mark, plan),
          ...sketch,
        },
      };
    }),
  );
}

const roles: Readonly<Record<TrenchMark["kind"], string>> = {
  source: "source",
  from: "branch-start",
  branch: "branch-tee",
  tee: "row-tee",
  bend: "bend",
  crossing: "crossing",
  low: "low-point",
  high: "high-point",
  pipes: "pipe-start",
  valve: "set-valve",
  end: "branch-end",
};

function told(mark: TrenchMark, plan: Plan): Readonly<Record<string, unknown>> {
  switch (mark.kind) {
    case "source":
      return { name: mark.name };
    case "from":
      return { fromBranch: mark.branch, fromStation_m: millimetres(mark.at_m) };
    case "branch":
      return { toBranch: mark.branch };
    case "tee":
      return { waterEnd: plan.mainline?.waterEnd[mark.index] ?? null };
    case "bend":
      return { angle_deg: rounded(mark.angle_deg, 1), elbows_deg: mark.elbows };
    case "crossing":
      return { crosses: mark.feature, name: mark.name, length_m: millimetres(mark.to_m - mark.station_m) };
    case "low":
      return { by_m: millimetres(mark.by_m), trapped_l: rounded(mark.trapped_l, 1), drainValve: mark.isFitted };
    case "high":
      return { by_m: millimetres(mark.by_m), airValve: mark.isFitted };
    case "pipes":
      return { lines: mark.pipes.map(({ line }) => lineName(line)), sizes: mark.pipes.map(({ pipe }) => pipe.size) };
    case "valve":
      return { line: lineName(mark.set) };
    case "end":
      return {};
    default:
      return mark satisfies never;
  }
}

import type { Plan } from "../../plan.ts";
import type { LonLat } from "../../plane/coordinate.ts";
import { markInWords } from "../../trench/mark-in-words.ts";
import type { TrenchMark } from "../../trench/trench-marks.ts";
import type { TrenchStation } from "../../trench/trench-stations.ts";
import { text } from "../../units.ts";
import { known } from "../known.ts";
import { millimetres } from "../rounding.ts";
import { isSketch } from "../sketch.ts";
import { branchPlaces, stationAt } from "../trench-places.ts";
import type { Column, Layer, LayerFeature, Place, Value } from "./layer.ts";
import { type LayerJob, placeAt } from "./layer-job.ts";
import { named } from "./named.ts";
import { baselineColumns, sketchColumns, tailValues } from "./point-columns.ts";

const length = (name: string): Column => ({ name, type: "number", decimals: 3 });
const textColumn = (name: string): Column => ({ name, type: "text" });

/** The branches of the main line, each from its upstream end. */
export function routeLayer(job: LayerJob): Layer {
  const branches = branchPlaces(job.plan);
  return named({
    kind: "route",
    shape: "line",
    columns: [
      textColumn("role"),
      textColumn("branch"),
      length("length_m"),
      length("groundLength_m"),
      ...sketchColumns(job),
    ],
    count: branches.length,
    *features(): Generator<LayerFeature> {
      for (const { name, line, length_m, groundLength_m } of branches) {
        yield {
          id: `main-line-${name}`,
          parts: { kind: "main-line", code: "L", block: null, row: name, number: null, own: null },
          geometry: { shape: "line", places: placesOf(job, line) },
          values: [
            "main-line",
            name,
            millimetres(length_m),
            groundLength_m === null ? null : millimetres(groundLength_m),
            ...sketchValue(job.plan),
          ],
        };
      }
    },
  });
}

/** Every pipe as a line, branch by branch, where their sizes are chosen; pipes side by side lie on one line. */
export function pipesLayer(job: LayerJob): Layer {
  const pipes = branchPlaces(job.plan).flatMap(({ name, pipes: along }) =>
    along
      .flatMap(({ from_m, to_m, line, pipes: abreast }, i) =>
        abreast.map(({ line: of, pipe }) => ({
          id: `pipe-${name}-${i + 1}-${of}`,
          name,
          of,
          pipe,
          from_m,
          to_m,
          line,
        })),
      )
      .map((pipe, i) => ({ ...pipe, number: i + 1 })),
  );
  return named({
    kind: "pipes",
    shape: "line",
    columns: [
      ...["role", "branch", "line", "size"].map(textColumn),
      { name: "outside_mm", type: "number", decimals: 3 },
      { name: "inside_mm", type: "number", decimals: 3 },
      length("from_m"),
      length("to_m"),
      ...sketchColumns(job),
    ],
    count: pipes.length,
    *features(): Generator<LayerFeature> {
      for (const { id, name, number, of, pipe, from_m, to_m, line } of pipes) {
        yield {
          id,
          parts: { kind: "pipe", code: "W", block: null, row: name, number, own: null },
          geometry: { shape: "line", places: placesOf(job, line) },
          values: [
            "pipe",
            name,
            lineName(of),
            pipe.size,
            pipe.outside_mm,
            pipe.inside_mm,
            millimetres(from_m),
            millimetres(to_m),
            ...sketchValue(job.plan),
          ],
        };
      }
    },
  });
}

/** Every station of the trench: where to peg, and how deep to dig there. */
export function stationsLayer(job: LayerJob): Layer {
  const stations = branchPlaces(job.plan).flatMap(({ name, stations: along }) =>
    along.map((station, i) => ({ name, station, number: i + 1 })),
  );
  return named({
    kind: "stations",
    shape: "point",
    columns: [
      textColumn("role"),
      textColumn("branch"),
      { name: "number", type: "whole" },
      ...heightColumns,
      textColumn("note"),
      ...baselineColumns(job),
      ...sketchColumns(job),
    ],
    count: stations.length,
    *features(): Generator<LayerFeature> {
      const tail = tailValues(job);
      for (const { name, station, number } of stations) {
        const at = stationAt(job.plan, station);
        yield {
          id: `station-${name}-${number}`,
          parts: { kind: "trench-station", code: "T", block: null, row: name, number, own: null },
          geometry: { shape: "point", place: { at, height_m: known(station.ground_m) } },
          values: [
            "trench-station",
            name,
            number,
            ...heights(station),
            station.marks.map((mark) => text(markInWords(mark), job.plan.project.units)).join("; "),
            ...tail(at),
          ],
        };
      }
    },
  });
}

/** Everything that is met along the main line: row tees, branches, bends, valves, low and high points, both ends of crossings. */
export function fittingsLayer(job: LayerJob): Layer {
  const { plan } = job;
  const met = branchPlaces(plan).flatMap(({ name, stations }) => {
    const counts = new Map<string, number>();
    return stations.flatMap((station) =>
      station.marks.map((mark) => {
        const number = (counts.get(mark.kind) ?? 0) + 1;
        counts.set(mark.kind, number);
        return { name, station, mark, number };
      }),
    );
  });
  return named({
    kind: "fittings",
    shape: "point",
    columns: [
      textColumn("role"),
      textColumn("branch"),
      ...heightColumns,
      textColumn("waterEnd"),
      textColumn("note"),
      ...baselineColumns(job),
      ...sketchColumns(job),
    ],
    count: met.length,
    *features(): Generator<LayerFeature> {
      const tail = tailValues(job);
      for (const { name, station, mark, number } of met) {
        const at = stationAt(plan, station);
        const role = roles[mark.kind];
        yield {
          id: `${role}-${name}-${number}`,
          parts: { kind: role, code: codes[mark.kind], block: null, row: name, number, own: null },
          geometry: { shape: "point", place: { at, height_m: known(station.ground_m) } },
          values: [
            role,
            name,
            ...heights(station),
            mark.kind === "tee" ? (plan.mainline?.waterEnd[mark.index] ?? null) : null,
            text(markInWords(mark), plan.project.units),
            ...tail(at),
          ],
        };
      }
    },
  });
}

const heightColumns: readonly Column[] = [
  length("station_m"),
  length("slopeStation_m"),
  length("ground_m"),
  length("pipe_m"),
  length("bottom_m"),
  length("depth_m"),
  textColumn("row"),
];

function heights(station: TrenchStation): readonly Value[] {
  const { station_m, slopeStation_m, ground_m, pipe_m, bottom_m, depth_m, marks } = station;
  return [
    millimetres(station_m),
    known(slopeStation_m, millimetres),
    known(ground_m, millimetres),
    known(pipe_m, millimetres),
    known(bottom_m, millimetres),
    millimetres(depth_m),
    teeOf(marks),
  ];
}

/** The row that has its tee at a station, or null. */
function teeOf(marks: readonly TrenchMark[]): string | null {
  return marks.flatMap((mark) => (mark.kind === "tee" ? [mark.row] : []))[0] ?? null;
}

function lineName(line: number): string {
  return line === 0 ? "main" : `set ${line}`;
}

function sketchValue(plan: Plan): readonly Value[] {
  return isSketch(plan) ? [true] : [];
}

function placesOf(job: LayerJob, line: readonly LonLat[]): readonly Place[] {
  const { ground } = job.plan;
  if (ground === null) throw new Error("a plan with a main line has a ground");
  return line.map((at) => ({ at, height_m: placeAt(job, ground.frame.toPlane(at)).height_m }));
}

/** Letters of what is met along the main line: two each, so that none is taken for that of a layer. */
const codes: Readonly<Record<TrenchMark["kind"], string>> = {
  source: "SO",
  from: "FR",
  branch: "BR",
  tee: "TE",
  bend: "BE",
  crossing: "CR",
  low: "LO",
  high: "HI",
  pipes: "PI",
  valve: "VA",
  end: "EN",
};

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

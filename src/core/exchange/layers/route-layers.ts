import type { Plan } from "../../plan.ts";
import type { LonLat } from "../../plane/coordinate.ts";
import { markInWords } from "../../trench/mark-in-words.ts";
import type { TrenchStation } from "../../trench/trench-stations.ts";
import { text } from "../../units.ts";
import { millimetres } from "../rounding.ts";
import { isSketch } from "../sketch.ts";
import { type BranchPlaces, branchPlaces, stationAt } from "../trench-places.ts";
import { lengthColumn, textColumn } from "./columns.ts";
import type { Layer, LayerFeature, Place, Value } from "./layer.ts";
import { groundAt, type LayerJob, placeAt } from "./layer-job.ts";
import { named } from "./named.ts";
import { baselineColumns, sketchColumns, tailValues } from "./point-columns.ts";
import { lineName, trenchColumns, trenchValues } from "./trench-columns.ts";

/** The branches of the main line, each from its upstream end. */
export function routeLayer(job: LayerJob): Layer {
  const branches = branchPlaces(job.plan);
  return named({
    kind: "route",
    shape: "line",
    columns: [
      textColumn("role"),
      textColumn("branch"),
      lengthColumn("length_m"),
      lengthColumn("groundLength_m"),
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
      lengthColumn("from_m"),
      lengthColumn("to_m"),
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

/** Every station of the trench: where to peg, how deep to dig there, and what lies in it from there on where the sizes are chosen. */
export function stationsLayer(job: LayerJob): Layer {
  const isSized = job.plan.trench?.isSized ?? false;
  const stations = branchPlaces(job.plan).flatMap(({ name, stations: along, pipes }) =>
    along.map((station, i) => ({ name, station, number: i + 1, sizes: sizesAt(pipes, station.station_m) })),
  );
  return named({
    kind: "stations",
    shape: "point",
    columns: [
      textColumn("role"),
      textColumn("branch"),
      { name: "number", type: "whole" },
      ...trenchColumns,
      textColumn("note"),
      ...(isSized ? [textColumn("pipes")] : []),
      ...baselineColumns(job),
      ...sketchColumns(job),
    ],
    count: stations.length,
    *features(): Generator<LayerFeature> {
      const tail = tailValues(job);
      for (const { name, station, number, sizes } of stations) {
        const at = stationAt(job.plan, station);
        yield {
          id: `station-${name}-${number}`,
          parts: { kind: "trench-station", code: "T", block: null, row: name, number, own: null },
          geometry: { shape: "point", place: { at, height_m: groundAt(job, station.ground_m) } },
          values: [
            "trench-station",
            name,
            number,
            ...trenchValues(station),
            metOf(job.plan, station),
            ...(isSized ? [sizes] : []),
            ...tail(at),
          ],
        };
      }
    },
  });
}

/** "pvc-40-2in + pvc-40-1in": what lies from a station on, and at the end of the branch what lies up to it. */
function sizesAt(along: BranchPlaces["pipes"], station_m: number): string {
  const here = along.findLast(({ from_m }) => from_m <= station_m + same_m) ?? along[0];
  return (here?.pipes ?? []).map(({ pipe }) => pipe.size).join(" + ");
}

/** What is met at a station, in words; null where nothing is. */
function metOf({ project }: Plan, { marks }: TrenchStation): string | null {
  return marks.length === 0 ? null : marks.map((mark) => text(markInWords(mark), project.units)).join("; ");
}

/** A station at a place is that place. */
const same_m = 1e-6;

function sketchValue(plan: Plan): readonly Value[] {
  return isSketch(plan) ? [true] : [];
}

function placesOf(job: LayerJob, line: readonly LonLat[]): readonly Place[] {
  const { ground } = job.plan;
  if (ground === null) throw new Error("a plan with a main line has a ground");
  return line.map((at) => ({ at, height_m: placeAt(job, ground.frame.toPlane(at)).height_m }));
}

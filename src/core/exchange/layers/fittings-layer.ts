import { markInWords } from "../../trench/mark-in-words.ts";
import type { TrenchMark } from "../../trench/trench-marks.ts";
import { text } from "../../units.ts";
import { millimetres, rounded } from "../rounding.ts";
import { branchPlaces, stationAt } from "../trench-places.ts";
import { textColumn } from "./columns.ts";
import type { Column, Layer, LayerFeature, Value } from "./layer.ts";
import { groundAt, type LayerJob } from "./layer-job.ts";
import { named } from "./named.ts";
import { baselineColumns, sketchColumns, tailValues } from "./point-columns.ts";
import { lineName, trenchColumns, trenchValues } from "./trench-columns.ts";

/** Everything that is met along the main line: row tees, branches, bends, valves, low and high points, both ends of crossings. */
export function fittingsLayer(job: LayerJob): Layer {
  const { plan } = job;
  const met = branchPlaces(plan).flatMap(({ name, stations }) => {
    const counts = new Map<string, number>();
    return stations.flatMap((station) =>
      station.marks.map((mark) => {
        const number = (counts.get(mark.kind) ?? 0) + 1;
        counts.set(mark.kind, number);
        return { branch: name, station, mark, number };
      }),
    );
  });
  return named({
    kind: "fittings",
    shape: "point",
    columns: [
      textColumn("role"),
      textColumn("branch"),
      ...trenchColumns,
      ...toldColumns,
      textColumn("note"),
      ...baselineColumns(job),
      ...sketchColumns(job),
    ],
    count: met.length,
    *features(): Generator<LayerFeature> {
      const tail = tailValues(job);
      for (const { branch, station, mark, number } of met) {
        const at = stationAt(plan, station);
        const role = roles[mark.kind];
        const told = toldOf(mark, plan.mainline?.waterEnd ?? []);
        yield {
          id: `${role}-${branch}-${number}`,
          parts: { kind: role, code: codes[mark.kind], block: null, row: branch, number, own: null },
          geometry: { shape: "point", place: { at, height_m: groundAt(job, station.ground_m) } },
          values: [
            role,
            branch,
            ...trenchValues(station),
            ...toldColumns.map(({ name }) => told[name] ?? null),
            text(markInWords(mark), plan.project.units),
            ...tail(at),
          ],
        };
      }
    },
  });
}

/** What only some of them have. */
const toldColumns: readonly (Column & { readonly name: keyof Told })[] = [
  { name: "waterEnd", type: "text" },
  { name: "thing", type: "text" },
  { name: "fromBranch", type: "text" },
  { name: "fromStation_m", type: "number", decimals: 3 },
  { name: "toBranch", type: "text" },
  { name: "angle_deg", type: "number", decimals: 1 },
  { name: "crosses", type: "text" },
  { name: "length_m", type: "number", decimals: 3 },
  { name: "by_m", type: "number", decimals: 3 },
  { name: "trapped_l", type: "number", decimals: 1 },
  { name: "drainValve", type: "yes" },
  { name: "airValve", type: "yes" },
  { name: "line", type: "text" },
  { name: "sizes", type: "text" },
];

interface Told {
  readonly waterEnd?: Value;
  readonly thing?: Value;
  readonly fromBranch?: Value;
  readonly fromStation_m?: Value;
  readonly toBranch?: Value;
  readonly angle_deg?: Value;
  readonly crosses?: Value;
  readonly length_m?: Value;
  readonly by_m?: Value;
  readonly trapped_l?: Value;
  readonly drainValve?: Value;
  readonly airValve?: Value;
  readonly line?: Value;
  readonly sizes?: Value;
}

function toldOf(mark: TrenchMark, waterEnd: readonly string[]): Told {
  switch (mark.kind) {
    case "source":
      return { thing: mark.name };
    case "from":
      return { fromBranch: mark.branch, fromStation_m: millimetres(mark.at_m) };
    case "branch":
      return { toBranch: mark.branch };
    case "tee":
      return { waterEnd: waterEnd[mark.index] ?? null };
    case "bend":
      return { angle_deg: rounded(mark.angle_deg, 1) };
    case "crossing":
      return { crosses: mark.feature, thing: mark.name, length_m: millimetres(mark.to_m - mark.station_m) };
    case "low":
      return { by_m: millimetres(mark.by_m), trapped_l: rounded(mark.trapped_l, 1), drainValve: yes(mark.isFitted) };
    case "high":
      return { by_m: millimetres(mark.by_m), airValve: yes(mark.isFitted) };
    case "pipes":
      return {
        line: mark.pipes.map(({ line }) => lineName(line)).join(", "),
        sizes: mark.pipes.map(({ pipe }) => pipe.size).join(", "),
      };
    case "valve":
      return { line: lineName(mark.set) };
    case "end":
      return {};
    default:
      return mark satisfies never;
  }
}

function yes(is: boolean): true | null {
  return is ? true : null;
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

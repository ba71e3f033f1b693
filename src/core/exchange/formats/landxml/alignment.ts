import type { Layer, LayerFeature, Place } from "../../layers/layer.ts";
import { placesOf } from "../../layers/places-of.ts";
import { xmlAttributes } from "../../xml.ts";
import { columnsFeature, coordGeom } from "./geometry-elements.ts";
import { lengthAlong, type SurveyNumbers, surveyNumber } from "./survey-numbers.ts";

/** A branch of the main line: its way, and what is known along it. */
export interface AlignmentJob {
  readonly name: string;
  readonly places: readonly Place[];
  /** Along the way on the ground, level. */
  readonly length_m: number;
  readonly stations: readonly StationHeights[];
  /** The branch as a feature with the columns of its layer; null where only its stations go out. */
  readonly feature: { readonly of: LayerFeature; readonly layer: Layer } | null;
}

/** Heights at a station, null where they are not known. */
export interface StationHeights {
  readonly branch: string;
  readonly place: Place;
  readonly station_m: number;
  readonly ground_m: number | null;
  readonly pipe_m: number | null;
}

/** The stations of a layer of trench stations, by the names of its columns. */
export function stationHeights(layer: Layer): readonly StationHeights[] {
  const columnOf = (name: string) => layer.columns.findIndex((column) => column.name === name);
  const [station, ground, pipe] = [columnOf("station_m"), columnOf("ground_m"), columnOf("pipe_m")];
  return [...layer.features()].flatMap(({ parts, geometry, values }) => {
    const number = (at: number) => {
      const value = values[at];
      return typeof value === "number" ? value : null;
    };
    const [place] = placesOf(geometry);
    const station_m = number(station);
    if (place === undefined || station_m === null) return [];
    return [{ branch: parts.row ?? "", place, station_m, ground_m: number(ground), pipe_m: number(pipe) }];
  });
}

/**
 * A branch as an Alignment with a Profile: the ground as a surface, the middle of the pipe as the line that is dug and laid to. Stations count along
 * the way by the numbers of the file, so that they fit its coordinates in a projection that stretches.
 */
export function alignment({ name, places, length_m, stations, feature }: AlignmentJob, numbers: SurveyNumbers): string {
  const length = lengthAlong(places.map(numbers.point));
  const perMetre = length_m > 0 ? length / length_m : numbers.perMetre;
  const along = (part: "ground_m" | "pipe_m") =>
    runsOf(stations, part).map((run) =>
      run.map(
        ({ station_m, [part]: height_m }) =>
          `${surveyNumber(station_m * perMetre)} ${surveyNumber((height_m ?? 0) * numbers.perMetre)}`,
      ),
    );
  const ground = along("ground_m");
  const pipe = along("pipe_m");
  const surface = ground.map((run) => `<PntList2D>${run.join(" ")}</PntList2D>`).join("");
  const profiles = [
    surface === "" ? "" : `<ProfSurf name="ground">${surface}</ProfSurf>`,
    ...pipe.map((run, i) => {
      const called = pipe.length === 1 ? "pipe" : `pipe ${i + 1}`;
      return `<ProfAlign name="${called}">${run.map((at) => `<PVI>${at}</PVI>`).join("")}</ProfAlign>`;
    }),
  ].join("");
  return [
    `<Alignment${xmlAttributes({ name, length: surveyNumber(length), staStart: "0.0000" })}>`,
    coordGeom(places, false, {}, numbers),
    profiles === "" ? "" : `<Profile${xmlAttributes({ name })}>${profiles}</Profile>`,
    feature === null ? "" : columnsFeature(feature.layer.columns, feature.of, { code: "columns" }),
    "</Alignment>\n",
  ].join("");
}

/** Stations in runs of known heights: a gap is not bridged. One known height alone makes no profile. */
function runsOf(
  stations: readonly StationHeights[],
  part: "ground_m" | "pipe_m",
): readonly (readonly StationHeights[])[] {
  const runs: StationHeights[][] = [];
  let run: StationHeights[] = [];
  for (const station of stations) {
    if (station[part] === null) {
      runs.push(run);
      run = [];
    } else if (station.station_m !== run.at(-1)?.station_m) run.push(station);
  }
  return [...runs, run].filter(({ length }) => length > 1);
}

import { unitLength_m } from "../../../systems/unit-length.ts";
import type { HandOverJob } from "../../format.ts";
import type { Place } from "../../layers/layer.ts";

/** A place in the numbers of a file. */
export interface SurveyPoint {
  readonly east: number;
  readonly north: number;
  readonly height: number | null;
}

/** Places and lengths as the file counts them. */
export interface SurveyNumbers {
  readonly perMetre: number;
  point(place: Place): SurveyPoint;
  /** "northing easting" or "northing easting height": the order of LandXML. */
  text(point: SurveyPoint): string;
}

export function surveyNumbers({ system }: Pick<HandOverJob, "system">): SurveyNumbers {
  const perMetre = system.unit === "deg" ? 1 : 1 / unitLength_m[system.unit];
  return {
    perMetre,
    point: ({ at, height_m }) => {
      const [east, north] = system.fromLonLat(at[0], at[1]);
      return { east, north, height: height_m === null ? null : height_m * perMetre };
    },
    text: ({ east, north, height }) => [north, east, ...(height === null ? [] : [height])].map(surveyNumber).join(" "),
  };
}

/** Four decimals: 0.1 mm, or 0.03 mm in feet. */
export function surveyNumber(value: number): string {
  const text = value.toFixed(4);
  return text === "-0.0000" ? "0.0000" : text;
}

/** Length along points by the numbers of the file, heights aside. */
export function lengthAlong(points: readonly SurveyPoint[]): number {
  return points.slice(1).reduce((sum, { east, north }, i) => {
    const from = points[i];
    return from === undefined ? sum : sum + Math.hypot(east - from.east, north - from.north);
  }, 0);
}

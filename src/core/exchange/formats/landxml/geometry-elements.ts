import type { Column, LayerFeature, Place } from "../../layers/layer.ts";
import { xmlAttributes } from "../../xml.ts";
import { lengthAlong, type SurveyNumbers, surveyNumber } from "./survey-numbers.ts";

/** A chain of straight pieces; `isClosed` leads back to the first place. Heights stand where every place of it has one. */
export function coordGeom(
  places: readonly Place[],
  isClosed: boolean,
  attributes: Readonly<Record<string, string>>,
  numbers: SurveyNumbers,
): string {
  const isHigh = places.every(({ height_m }) => height_m !== null);
  const points = places.map(numbers.point).map((point) => (isHigh ? point : { ...point, height: null }));
  const ends = points.map((from, i) => [from, points[i + 1] ?? (isClosed ? points[0] : undefined)] as const);
  const lines = ends.map(([from, to]) => {
    if (to === undefined) return "";
    const length = surveyNumber(lengthAlong([from, to]));
    return `<Line length="${length}"><Start>${numbers.text(from)}</Start><End>${numbers.text(to)}</End></Line>`;
  });
  return `<CoordGeom${xmlAttributes(attributes)}>${lines.join("")}</CoordGeom>`;
}

/** Columns of a feature as a Feature with a Property each; those without a value are left out. */
export function columnsFeature(
  columns: readonly Column[],
  { id, values }: LayerFeature,
  attributes: Readonly<Record<string, string>>,
): string {
  const pairs: readonly (readonly [string, string | number | boolean | null])[] = [
    ["id", id],
    ...columns.map(({ name }, i) => [name, values[i] ?? null] as const),
  ];
  const properties = pairs.map(([label, value]) =>
    value === null ? "" : `<Property${xmlAttributes({ label, value: String(value) })}/>`,
  );
  return `<Feature${xmlAttributes(attributes)}>${properties.join("")}</Feature>`;
}

import type { XmlElement } from "../../xml-steps.ts";
import { attributeOf, childOf } from "../../xml-tree.ts";
import { arcPoints, turnBetween } from "../dxf/curves.ts";
import type { SurveyPlace } from "./survey.ts";
import { placeOf, placesInList } from "./survey-places.ts";

/** The ways of a CoordGeom, pieces that meet put together; or what kind of piece it is that is not read, or "broken". */
export type Ways =
  | { readonly lines: readonly (readonly SurveyPlace[])[]; readonly curves: number }
  | { readonly unread: string }
  | "broken";

/** Ends that are this near to each other meet, in units of the file. */
const meeting = 0.001;

/** Source: LandXML 1.2, CoordGeom: Line, Curve (a part of a circle, `rot` cw or ccw), IrregularLine; spirals are not read. */
export function waysOf(geometry: XmlElement, named: ReadonlyMap<string, XmlElement>): Ways {
  const lines: SurveyPlace[][] = [];
  let curves = 0;
  for (const piece of geometry.children) {
    if (piece.name === "Feature") continue;
    if (piece.name === "Spiral" || piece.name === "Chain") return { unread: piece.name };
    if (!["Line", "Curve", "IrregularLine"].includes(piece.name)) continue;
    const places = piecePlaces(piece, named);
    const [first] = places ?? [];
    if (places === null || first === undefined) return "broken";
    if (piece.name === "Curve") curves++;
    const before = lines.at(-1);
    const last = before?.at(-1);
    if (before !== undefined && last !== undefined && meet(last, first)) before.push(...places.slice(1));
    else lines.push([...places]);
  }
  return lines.length === 0 ? "broken" : { lines, curves };
}

/** Whether a way leads back to where it begins. */
export function isRing(line: readonly SurveyPlace[]): boolean {
  const [first, last] = [line[0], line.at(-1)];
  return line.length > 3 && first !== undefined && last !== undefined && meet(first, last);
}

function meet(a: SurveyPlace, b: SurveyPlace): boolean {
  return Math.hypot(a[0] - b[0], a[1] - b[1]) < meeting;
}

function piecePlaces(piece: XmlElement, named: ReadonlyMap<string, XmlElement>): readonly SurveyPlace[] | null {
  const at = (name: string): SurveyPlace | null => {
    const child = childOf(piece, name);
    return child === null ? null : placeOf(child, named);
  };
  const [from, to] = [at("Start"), at("End")];
  if (piece.name === "IrregularLine") {
    const [flat, high] = [childOf(piece, "PntList2D"), childOf(piece, "PntList3D")];
    if (high !== null) return placesInList(high.text, 3);
    return flat === null ? null : placesInList(flat.text, 2);
  }
  if (from === null || to === null) return null;
  if (piece.name === "Line") return [from, to];
  const centre = at("Center");
  return centre === null ? null : curvePlaces(from, centre, to, attributeOf(piece, "rot") === "cw");
}

/** The ends stay as they are said; what lies between is on the circle, heights in proportion. */
function curvePlaces(
  from: SurveyPlace,
  centre: SurveyPlace,
  to: SurveyPlace,
  isRight: boolean,
): readonly SurveyPlace[] {
  const radius = Math.hypot(from[0] - centre[0], from[1] - centre[1]);
  const angle = ([x, y]: SurveyPlace) => Math.atan2(y - centre[1], x - centre[0]);
  const turn_rad = isRight ? -turnBetween(angle(to), angle(from)) : turnBetween(angle(from), angle(to));
  const between = arcPoints([centre[0], centre[1], null], radius, angle(from), turn_rad).slice(1, -1);
  const [low, high] = [from[2], to[2]];
  const raised = between.map(([x, y], i): SurveyPlace => {
    const share = (i + 1) / (between.length + 1);
    return [x, y, low === null || high === null ? null : low + share * (high - low)];
  });
  return [from, ...raised, to];
}

import type { XmlElement } from "../../xml-steps.ts";
import { attributeOf } from "../../xml-tree.ts";
import type { SurveyPlace } from "./survey.ts";

/** How far a point may refer to another one. */
const mostReferences = 20;

/** The place that an element of a point says, by its text ("northing easting" or with a height behind) or by the point it refers to; null for none. */
export function placeOf(element: XmlElement, named: ReadonlyMap<string, XmlElement>, depth = 0): SurveyPlace | null {
  const own = numbersIn(element.text);
  if (own !== null && own.length > 0) {
    const [north, east, height] = own;
    return north === undefined || east === undefined ? null : [east, north, height ?? null];
  }
  const other = named.get(attributeOf(element, "pntRef") ?? "");
  return own === null || other === undefined || depth > mostReferences ? null : placeOf(other, named, depth + 1);
}

/** The places of a list of "northing easting" pairs, or of threes with heights; null when it is none. */
export function placesInList(text: string, size: 2 | 3): readonly SurveyPlace[] | null {
  const numbers = numbersIn(text);
  if (numbers === null || numbers.length === 0 || numbers.length % size !== 0) return null;
  return Array.from({ length: numbers.length / size }, (_, i) => {
    const [north = 0, east = 0, height] = numbers.slice(size * i, size * i + size);
    return [east, north, height ?? null];
  });
}

/** Numbers with spaces between; null when something else stands there. */
export function numbersIn(text: string): readonly number[] | null {
  const words = text.trim().split(/\s+/);
  if (words.length === 1 && words[0] === "") return [];
  const isNumber = (word: string) => /^[-+]?(\d+\.?\d*|\.\d+)([eE][-+]?\d{1,3})?$/.test(word);
  const numbers = words.map((word) => (isNumber(word) ? Number(word) : Number.NaN));
  return numbers.every(Number.isFinite) ? numbers : null;
}

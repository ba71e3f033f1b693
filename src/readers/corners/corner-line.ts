import { readPlace } from "../../core/drawing/place-text.ts";
import { plainNumbers } from "./plain-numbers.ts";

/** What a line of a list comes to. */
export type CornerLine =
  /** `isFree`: which number is the latitude is not said by letters or words. */
  | {
      readonly kind: "degrees";
      readonly lat_deg: number;
      readonly lon_deg: number;
      readonly isFree: boolean;
      /** A third number stands beside, of which nothing is said. */
      readonly hasMore: boolean;
    }
  | {
      readonly kind: "utm";
      readonly zone: number;
      readonly letter: string;
      readonly east: number;
      readonly north: number;
    }
  /** Numbers of a plane, in the order of the line unless letters say which is which; a third is a height in the same unit. */
  | {
      readonly kind: "plane";
      readonly first: number;
      readonly second: number;
      readonly height: number | null;
      readonly isEastFirst: boolean | null;
    }
  | { readonly kind: "unread"; readonly reason: string };

/** Letters of a line with one corner, its name with it. */
const longest = 200;
const number = String.raw`[+-]?\d+(?:\.\d+)?`;
const between = String.raw`\s*(?:m|ft)?\s*[,;\t ]\s*`;
/** "10N 547321 4238115", "Zone 10 S, 547321 mE, 4238115 mN", "10S 547321E 4238115N". */
const utm = new RegExp(
  `^(?:utm\\s*)?(?:zone\\s*)?(\\d{1,2})\\s*([c-hj-np-x])(?:orth|outh)?${between}\\s*(${number})\\s*(?:m\\s*)?e?${between}(${number})\\s*(?:m\\s*)?n?$`,
  "i",
);
const lettered = new RegExp(
  `^(?:(e|x|n|y)(?:asting|orthing)?\\s*[:=]?\\s*(${number})|(${number})\\s*m?\\s*(e|n))${between}\\s*(?:(e|x|n|y)(?:asting|orthing)?\\s*[:=]?\\s*(${number})|(${number})\\s*m?\\s*(e|n))$`,
  "i",
);

/** A line as one corner. `label` is how many numbers at its beginning are only the corner's number (0 or 1), told by the whole list. */
export function cornerLine(written: string, label: number): CornerLine {
  if (written.length > longest) return { kind: "unread", reason: "it is too long for one corner" };
  const line = withoutName(plainNumbers(written.trim()), label);
  const zoned = utm.exec(line);
  if (zoned !== null) {
    const [, zone = "", letter = "", east = "", north = ""] = zoned;
    if (Number(zone) < 1 || Number(zone) > 60) return { kind: "unread", reason: "zones go from 1 to 60" };
    return { kind: "utm", zone: Number(zone), letter: letter.toUpperCase(), east: Number(east), north: Number(north) };
  }
  return planeLine(line) ?? degreesLine(line);
}

/** Eastings and northings: at least one number beyond what degrees can be. */
function planeLine(line: string): CornerLine | null {
  const named = lettered.exec(line);
  if (named !== null) {
    const [, oneBefore, one, oneToo, oneAfter, otherBefore, other, otherToo, otherAfter] = named;
    const [first, second] = [Number(one ?? oneToo), Number(other ?? otherToo)];
    const isEast = (letter = "") => /[ex]/i.test(letter);
    const [isEastFirst, isEastSecond] = [isEast(oneBefore ?? oneAfter), isEast(otherBefore ?? otherAfter)];
    if (!isBeyondDegrees(first, second)) return null;
    if (isEastFirst === isEastSecond) return { kind: "unread", reason: "one number must be east, the other north" };
    return { kind: "plane", first, second, height: null, isEastFirst };
  }
  const numbers = line.split(/\s*[,;\t ]\s*/).filter((part) => !/^(?:m|ft)$/i.test(part));
  if (numbers.length < 2 || numbers.length > 3 || !numbers.every((part) => /^[+-]?\d+(?:\.\d+)?$/.test(part)))
    return null;
  const [first = NaN, second = NaN, height = null] = numbers.map(Number);
  if (!isBeyondDegrees(first, second)) return null;
  return { kind: "plane", first, second, height, isEastFirst: null };
}

function isBeyondDegrees(first: number, second: number): boolean {
  return Math.max(Math.abs(first), Math.abs(second)) > 180;
}

function degreesLine(line: string): CornerLine {
  const named = latitudeAndLongitude(line);
  const letters = /(?:^|[^a-z])[nsew](?:$|[^a-z])|north|south|east|west/i.test(line);
  const pair = /^([+-]?\d+\.\d+)\s*[,;\t ]\s*([+-]?\d+\.\d+)(\s*[,;\t ]\s*[+-]?\d+(?:\.\d+)?)?$/.exec(line);
  const read = readPlace(named ?? (pair === null ? line : `${pair[1]}, ${pair[2]}`));
  const hasMore = pair?.[3] !== undefined;
  if (read.ok) {
    return { kind: "degrees", lat_deg: read.at[1], lon_deg: read.at[0], isFree: named === null && !letters, hasMore };
  }
  const swapped = pair === null ? null : readPlace(`${pair[2]}, ${pair[1]}`);
  if (swapped?.ok !== true || pair === null) return { kind: "unread", reason: read.reason };
  return { kind: "degrees", lat_deg: Number(pair[1]), lon_deg: Number(pair[2]), isFree: true, hasMore };
}

/** "Longitude: -122.458, latitude: 38.2914" with the latitude first and without its words; null for a line without them. */
function latitudeAndLongitude(line: string): string | null {
  const [, first = "", one = "", second = "", other = ""] =
    /^(lat|lon)(?:gitude|itude|g)?\.?\s*[:=]?\s*(.*?)\s*[,;]?\s*(lat|lon)(?:gitude|itude|g)?\.?\s*[:=]?\s*(.*)$/i.exec(
      line,
    ) ?? [];
  if (first === "" || first.toLowerCase() === second.toLowerCase()) return null;
  return first.toLowerCase() === "lat" ? `${one}, ${other}` : `${other}, ${one}`;
}

/** The line without a name before it ("P1:", "corner 3", "NE pin -") and without what stands behind it in brackets. */
function withoutName(line: string, label: number): string {
  const bare = line
    .replace(/^[-*•]\s+/, "")
    .replace(/^[([]([^()[\]]*)[)\]][,;]?$/, "$1")
    .replace(/\s*\([^)]*\)$/, "");
  const numbered = label === 1 ? bare.replace(/^\d+(?:[.):]|\s*[,;\t ])\s*/, "") : bare.replace(/^\d+\s*[.):]\s+/, "");
  const named =
    /^(?![nsewxy]\s*[:=]?\s*[+-]?\d|utm|zone|lat|lon|north|south|east|west)[a-z][\w .-]*?\s*(?:[:;,=\t]\s*|\s+(?=[+-]?\d|[nsewxy]\s*[:=]?\s*\d))(?=.*\d)/i.exec(
      numbered,
    );
  return named === null || !/\d.*\d/.test(numbered.slice(named[0].length)) ? numbered : numbered.slice(named[0].length);
}

/** 1 where every line begins with the next whole number of a row of them (no latitude) and has two numbers more; 0 else. */
export function labelsOf(lines: readonly string[]): 0 | 1 {
  const numbered = /^\s*(\d+)(?:[.):]\s+|\s*[,;\t ]\s*)(?=\D*?\d+(?:\.\d+)?[^\d.].*\d)/;
  const firsts = lines.map((line) => numbered.exec(plainNumbers(line.slice(0, longest)))?.[1]);
  const start = Number(firsts[0]);
  if (firsts.length < 2 || (start > 1 && start <= 90)) return 0;
  return firsts.every((first, i) => first !== undefined && Number(first) === start + i) ? 1 : 0;
}

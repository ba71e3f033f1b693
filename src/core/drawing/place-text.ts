import { type LonLat, lonLat } from "../plane/coordinate.ts";

export type PlaceReading =
  | { readonly ok: true; readonly at: LonLat }
  /** The reason is a sentence without its full stop, in lower case. */
  | { readonly ok: false; readonly reason: string };

interface Angle {
  readonly degrees: number;
  /** "n", "s", "e", "w", or null when no letter says which it is. */
  readonly letter: string | null;
}

const wanted = 'write latitude, then longitude, such as "38.2914, -122.4580"';
const comma = "a comma in a number can mean two things: write 38.2914, -122.4580 with points";
const longestText = 100;
const number = "[+-]?\\d+(?:\\.\\d*)?|[+-]?\\.\\d+";
/** Parts stand apart by their mark or by a space, so that no number is taken for two. */
const angle = new RegExp(
  `^([nsew])?\\s*(${number})(?:\\s*[°d])?(?:(?:(?<=[°d])\\s*|\\s+)(\\d+(?:\\.\\d*)?)(?:\\s*')?(?:(?:(?<=')\\s*|\\s+)(\\d+(?:\\.\\d*)?)(?:\\s*")?)?)?\\s*([nsew])?$`,
);

/** Reads a place, see `parsePlace`. */
export function readPlace(text: string): PlaceReading {
  if (text.length > longestText) return refuse("that is too long for a place");
  const plain = plainSpelling(text);
  if (plain === "") return refuse(wanted);
  const halves = inHalves(plain);
  if (halves === null) return refuse(/\d,\d/.test(plain) ? comma : wanted);
  const [one, other] = halves.map(readAngle);
  if (one === undefined || other === undefined) return refuse(wanted);
  const reason = "reason" in one ? one.reason : "reason" in other ? other.reason : null;
  if (reason !== null || "reason" in one || "reason" in other)
    return refuse(/\d,\d/.test(plain) ? comma : (reason ?? wanted));
  return placed(one, other, plain);
}

function placed(one: Angle, other: Angle, text: string): PlaceReading {
  if ((one.letter === null) !== (other.letter === null))
    return refuse("write a letter for both numbers or for neither: N or S, and E or W");
  const isLat = ({ letter }: Angle) => letter === "n" || letter === "s";
  if (one.letter !== null && isLat(one) === isLat(other)) {
    return refuse("one of the two must be north or south, and the other east or west");
  }
  const [lat, lon] = one.letter !== null && !isLat(one) ? [other, one] : [one, other];
  if (Math.abs(lon.degrees) > 180 && /\d,\d/.test(text)) return refuse(comma);
  if (Math.abs(lat.degrees) > 90) {
    const isSwapped = Math.abs(lat.degrees) <= 180 && Math.abs(lon.degrees) <= 90;
    return refuse(`a latitude goes from -90 to 90${isSwapped ? "; it is written first, then the longitude" : ""}`);
  }
  if (Math.abs(lon.degrees) > 180) return refuse("a longitude goes from -180 to 180");
  return { ok: true, at: lonLat(lon.degrees + 0, lat.degrees + 0) };
}

/** The two angles of the text: at its comma, after or before its letters, or in the middle of its numbers. */
function inHalves(text: string): readonly [string, string] | null {
  const parts = text.split(/\s*[,;]\s*/);
  if (parts.length > 2) return null;
  const [one = "", other] = parts;
  if (other !== undefined) return [one, other];
  const lettered =
    /^([^nsew]+[nsew])\s*([^nsew]+[nsew])$/.exec(text) ?? /^([nsew][^nsew]+?)\s*([nsew][^nsew]+)$/.exec(text);
  if (lettered?.[1] !== undefined && lettered[2] !== undefined) return [lettered[1], lettered[2]];
  const numbers = [...text.matchAll(/[+-]?(?:\d+(?:\.\d*)?|\.\d+)\s*[°d'"]*\s*/g)].map(([each]) => each.trim());
  if (numbers.length % 2 !== 0 || numbers.length === 0 || /[nsew]/.test(text)) return null;
  if (numbers.join("").replace(/\s/g, "") !== text.replace(/\s/g, "")) return null;
  const half = numbers.length / 2;
  return [numbers.slice(0, half).join(" "), numbers.slice(half).join(" ")];
}

function readAngle(text: string): Angle | { readonly reason: string } {
  const [, before, written, minutes, seconds, after] = angle.exec(text) ?? [];
  if (written === undefined) return { reason: wanted };
  if (before !== undefined && after !== undefined) return { reason: "one letter for each number is enough" };
  const letter = before ?? after ?? null;
  const degrees = Math.abs(Number(written));
  const isSigned = /^[+-]/.test(written);
  if (letter !== null && isSigned) return { reason: "write a sign or a letter, not both: south and west are negative" };
  if (minutes !== undefined && written.includes("."))
    return { reason: "degrees before minutes must be a whole number" };
  if (seconds !== undefined && minutes?.includes("."))
    return { reason: "minutes before seconds must be a whole number" };
  if (Number(minutes ?? 0) >= 60 || Number(seconds ?? 0) >= 60)
    return { reason: "minutes and seconds must be less than 60" };
  const amount = degrees + Number(minutes ?? 0) / 60 + Number(seconds ?? 0) / 3600;
  const isNegative = written.startsWith("-") || letter === "s" || letter === "w";
  return { degrees: isNegative ? -amount : amount, letter };
}

/** Lower case, one spelling for each mark. */
function plainSpelling(text: string): string {
  return text
    .toLowerCase()
    .replace(/[′’‘`´]/g, "'")
    .replace(/[″“”]|''/g, '"')
    .replace(/[−–‐‑]/g, "-")
    .replace(/[º˚]|\bdeg(?:rees)?\b/g, "°")
    .replace(/\b(north|south|east|west)\b/g, (word) => word.charAt(0))
    .replace(/\s+/g, " ")
    .trim();
}

function refuse(reason: string): PlaceReading {
  return { ok: false, reason };
}

/** An angle of a cell: degrees, and whether a letter says that it is a latitude or a longitude. */
export interface CellAngle {
  readonly degrees: number;
  readonly is: "latitude" | "longitude" | null;
}

const written =
  /^([NSEW])?\s*([-+]?)\s*(\d{1,3})(?:\s*[°:d]\s*|\s+|-)(\d{1,2}(?:\.\d+)?)(?:(?:\s*[':m]\s*|\s+|-)(\d{1,2}(?:\.\d+)?))?\s*['"s]?\s*([NSEW])?$/i;
const decimal = /^([NSEW])?\s*([-+]?)\s*(\d{1,3}(?:\.\d+)?)\s*°?\s*([NSEW])?$/i;

/**
 * An angle in degrees and minutes, or degrees, minutes and seconds, or degrees with a letter or a sign for degrees; null when it is none. A bare
 * number is none: that is read as a number. `38°17'31.6"N`, `38 17 31.6`, `N 38:17.527`.
 */
export function angleOf(text: string): CellAngle | null {
  if (text.length > 40) return null;
  const plain = text
    .replace(/[′’‘´`]/g, "'")
    .replace(/[″“”]|''/g, '"')
    .replace(/[º˚]/g, "°")
    .replace(/[−–]/g, "-")
    .replace(/(\d),(\d)/g, "$1.$2")
    .trim();
  const [, before, sign = "", degrees, minutes = "0", seconds = "0", after] =
    written.exec(plain) ?? decimalParts(plain);
  if (degrees === undefined || (before !== undefined && after !== undefined)) return null;
  const letter = (before ?? after ?? "").toUpperCase();
  if (letter !== "" && sign !== "") return null;
  if (Number(minutes) >= 60 || Number(seconds) >= 60) return null;
  if (seconds !== "0" && minutes.includes(".")) return null;
  const amount = Number(degrees) + Number(minutes) / 60 + Number(seconds) / 3600;
  const isNegative = sign === "-" || letter === "S" || letter === "W";
  return {
    degrees: isNegative ? -amount : amount,
    is: letter === "" ? null : "NS".includes(letter) ? "latitude" : "longitude",
  };
}

function decimalParts(text: string): readonly (string | undefined)[] {
  const [all, before, sign, degrees, after] = decimal.exec(text) ?? [];
  if (all === undefined || (before === undefined && after === undefined && !text.includes("°"))) return [];
  return [all, before, sign, degrees, "0", "0", after];
}

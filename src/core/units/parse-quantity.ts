import { fromSi, toSi } from "./factors.ts";
import type { QuantityKind } from "./kind.ts";
import { leadingNumber } from "./number-text.ts";
import { spellingsOf, type Unit, unitAtStart, unitNamed } from "./unit-names.ts";
import { gaugeDiameter_mm, wireGauges } from "./wire-gauge.ts";

export type ParsedQuantity =
  | { readonly ok: true; readonly value: number }
  /** The reason is half a sentence that follows `"2,5 m" was not understood: `. */
  | { readonly ok: false; readonly reason: string };

const longestText = 100;

/**
 * A quantity as a person writes it, in the SI unit of its kind (see `QuantityKind`). A bare number, or text that is a plain number, is SI already.
 * Understood: "8 ft", "2.4 m", "7 ft 6 in", `7' 6-1/2"`, "1/2 in", "13 ga", "24°", "5 %", "0.5 gal/h" (US gallon), "1,000 ft", "2 usft".
 * Refused with a reason: no number, unknown unit, a comma that is no clear thousands group, NaN, parts out of order ("7.5 ft 6 in").
 * Limits on the value (a spacing above 0) are the caller's. Worked example: parseQuantity("length", "7 ft 6 in") gives 2.286.
 */
export function parseQuantity(kind: QuantityKind, input: number | string): ParsedQuantity {
  if (typeof input === "number") {
    return Number.isFinite(input) ? { ok: true, value: input + 0 } : refuse("it is not a finite number");
  }
  if (input.length > longestText) return refuse("the text is too long for a quantity");
  const text = plainSpelling(input);
  if (text === "") return refuse("it is empty");
  if (/^[+-]?(?:nan|inf(?:inity)?)$/.test(text)) return refuse("it is not a finite number");
  const isNegative = text.startsWith("-");
  const unsigned = text.replace(/^[+-]\s*/, "");
  return amountWithUnits(kind, unsigned, isNegative ? -1 : 1);
}

function amountWithUnits(kind: QuantityKind, text: string, sign: 1 | -1): ParsedQuantity {
  const first = leadingNumber(text);
  if (!first.ok) return refuse(first.reason);
  const rest = first.rest.trim();
  if (rest === "") return { ok: true, value: signed(first.amount, sign) };
  if (/^[\d-]/.test(rest)) return refuse(`there is a second number, "${shortened(rest)}", right after the first`);
  const gauge = /^(?:ga|gauge|g a)$/.exec(rest);
  if (gauge !== null) return gaugeDiameter(kind, sign * first.amount);
  if (/^(?:awg|swg|bwg)$/.test(rest)) {
    return refuse(
      "several gauge systems go by that name: write US steel wire gauge as 13 ga, or the diameter in mm or in",
    );
  }
  const spelling = unitAtStart(kind, rest);
  const unit = spelling === null ? null : unitNamed(kind, spelling);
  if (spelling === null || unit === null) return refuse(unknownUnit(kind, rest));
  const value = toSi(signed(first.amount, sign), unit.factor);
  const after = rest.slice(spelling.length).trim();
  return after === "" ? { ok: true, value } : withParts(kind, value, sign, first.isWhole, unit, spelling, after);
}

/** The inches after the feet, the ounces after the pounds: smaller than the unit before them, which must be a whole number. */
function withParts(
  kind: QuantityKind,
  value: number,
  sign: 1 | -1,
  isWhole: boolean,
  unit: Unit,
  spelling: string,
  after: string,
): ParsedQuantity {
  const next = leadingNumber(after.replace(/^(?:,|and\b|-)\s*/, ""));
  if (!next.ok || unit.parts.length === 0) return refuse(`"${after}" after "${spelling}" was not expected`);
  if (!isWhole) return refuse(`the part before "${spelling}" must be a whole number when another part follows`);
  const rest = next.rest.trim();
  // 7'6 is seven feet six; more than two digits is a thousands mark of another country.
  const isBareInches =
    rest === "" && (spelling === "'" || spelling === "ft") && next.amount < 100 && !/^\d{3}/.test(after);
  const partSpelling = isBareInches ? "in" : unitAtStart(kind, rest);
  const part = partSpelling === null ? null : unitNamed(kind, partSpelling);
  if (partSpelling === null || part === null || !unit.parts.includes(partSpelling)) {
    return refuse(`"${after}" cannot follow "${spelling}"`);
  }
  const partValue = toSi(next.amount, part.factor);
  if (fromSi(partValue, unit.factor) >= 1) return refuse(`"${after}" is more than one whole unit before it`);
  const last = isBareInches ? "" : rest.slice(partSpelling.length).trim();
  const total = value + signed(partValue, sign);
  return last === ""
    ? { ok: true, value: total }
    : withParts(kind, total, sign, next.isWhole, part, partSpelling, last);
}

/** No minus before nothing. */
function signed(amount: number, sign: 1 | -1): number {
  return sign === 1 ? amount : 0 - amount;
}

function gaugeDiameter(kind: QuantityKind, gauge: number): ParsedQuantity {
  if (kind !== "diameter") return refuse("a gauge is a wire diameter");
  const diameter_mm = gaugeDiameter_mm(gauge);
  if (diameter_mm !== null) return { ok: true, value: diameter_mm };
  return refuse(
    `that gauge is not in the table (US steel wire gauge ${wireGauges.join(", ")}): write the diameter in mm or in`,
  );
}

function unknownUnit(kind: QuantityKind, rest: string): string {
  const spellings = spellingsOf(kind).slice(0, 8);
  return `"${shortened(rest)}" is no unit that fits here; understood are ${spellings.join(", ")}${kind === "diameter" ? ", ga" : ""}`;
}

function shortened(text: string): string {
  return text.length > 20 ? `${text.slice(0, 20)}…` : text;
}

function refuse(reason: string): ParsedQuantity {
  return { ok: false, reason };
}

const vulgarFractions: ReadonlyMap<string, string> = new Map([
  ["½", "1/2"],
  ["¼", "1/4"],
  ["¾", "3/4"],
  ["⅛", "1/8"],
  ["⅜", "3/8"],
  ["⅝", "5/8"],
  ["⅞", "7/8"],
  ["⅓", "1/3"],
  ["⅔", "2/3"],
]);

/** Lower case, plain marks for typographic ones, single spaces, no dots after abbreviations. */
function plainSpelling(input: string): string {
  return input
    .replace(/[½¼¾⅛⅜⅝⅞⅓⅔]/g, (sign) => ` ${vulgarFractions.get(sign) ?? sign}`)
    .replace(/[′’‘`´]/g, "'")
    .replace(/[″“”]|''/g, '"')
    .replace(/[−–‐‑]/g, "-")
    .replace(/[º˚]/g, "°")
    .replace(/⁄/g, "/")
    .replace(/²|\^2/g, "2")
    .replace(/³|\^3/g, "3")
    .toLowerCase()
    .replace(/([a-z])\.(?=\s|$|[a-z/])/g, "$1")
    .replace(/\s*\bper\s+(?!cent)/g, "/")
    .replace(/([a-z])\s*\/\s*([a-z])/g, "$1/$2")
    .replace(/\s+/g, " ")
    .trim();
}

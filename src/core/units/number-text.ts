/** What stands at the start of a text as an amount, and the rest of it. */
export type LeadingNumber =
  | { readonly ok: true; readonly amount: number; readonly isWhole: boolean; readonly rest: string }
  | { readonly ok: false; readonly reason: string };

const mixed = /^(\d+)(?:\s+|\s*-\s*)(\d+)\s*\/\s*(\d+)/;
const fraction = /^(\d+)\s*\/\s*(\d+)/;
const plain = /^(?:\d[\d,]*(?:\.\d*)?|\.\d+)(?:e[+-]?\d+)?/;
const thousandsGroups = /^[1-9]\d{0,2}(?:,\d{3})+(?:\.\d*)?$/;

/**
 * Reads an unsigned amount: "2.4", ".5", "1e3", "1/2", "7 1/2", "6-1/2", "1,000".
 * A comma is taken only in clear groups of thousands ("1,000", "12,345.5"); "2,5" could be 2.5 or a slip, so it is refused.
 */
export function leadingNumber(text: string): LeadingNumber {
  const [, whole, over, under] = mixed.exec(text) ?? [];
  if (whole !== undefined && over !== undefined && under !== undefined) {
    return fractionOf(Number(whole), Number(over), Number(under), text.replace(mixed, ""));
  }
  const [, numerator, denominator] = fraction.exec(text) ?? [];
  if (numerator !== undefined && denominator !== undefined) {
    return fractionOf(0, Number(numerator), Number(denominator), text.replace(fraction, ""));
  }
  const written = plain.exec(text)?.[0];
  if (written === undefined) return { ok: false, reason: "it does not begin with a number" };
  const rest = text.slice(written.length);
  if (written.includes(",") && !thousandsGroups.test(written)) {
    return { ok: false, reason: "a comma in a number can mean two things: write 2.5 or 2500, not 2,5" };
  }
  const amount = Number(written.replaceAll(",", ""));
  if (!Number.isFinite(amount)) return { ok: false, reason: "the number is too large" };
  return { ok: true, amount, isWhole: /^[\d,]+$/.test(written), rest };
}

function fractionOf(whole: number, over: number, under: number, rest: string): LeadingNumber {
  if (under === 0) return { ok: false, reason: "a fraction cannot be over 0" };
  if (whole > 0 && over >= under)
    return { ok: false, reason: "the fraction after the whole number must be less than 1" };
  return { ok: true, amount: whole + over / under, isWhole: false, rest };
}

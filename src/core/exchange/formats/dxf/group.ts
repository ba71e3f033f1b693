/** One group of DXF: its code, then its value, a line each. */
export function group(code: number, value: string | number): string {
  return `${code}\n${value}\n`;
}

/** Groups, one after another: `groups([0, "POINT"], [8, "VINES"])`. */
export function groups(...pairs: readonly (readonly [code: number, value: string | number])[]): string {
  return pairs.map(([code, value]) => group(code, value)).join("");
}

/** A length as it stands in a drawing, 4 decimals: 0.1 mm, or 0.03 mm in feet. */
export function dxfNumber(value: number): string {
  const text = value.toFixed(4);
  return text === "-0.0000" ? "0.0000" : text;
}

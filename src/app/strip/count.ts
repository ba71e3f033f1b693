/** "1 row", "1,386 rows". */
export function count(number: number, noun: string): string {
  return `${grouped(number)} ${noun}${number === 1 ? "" : "s"}`;
}

/** A whole number with its thousands grouped: "1,386". */
export function grouped(number: number): string {
  return Math.round(number).toLocaleString("en-US");
}

// Made once: a number is written many times a frame, and making a format costs more than using it.
const format = new Intl.NumberFormat("en-US", { maximumFractionDigits: 0 });

/** "1 row", "1,386 rows". */
export function count(number: number, noun: string): string {
  return `${grouped(number)} ${noun}${number === 1 ? "" : "s"}`;
}

/** A whole number with its thousands grouped: "1,386". */
export function grouped(number: number): string {
  return format.format(number);
}

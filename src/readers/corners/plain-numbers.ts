/**
 * A line with its numbers written with points: "4,265,432.10" loses its commas, "38,2914; -122,4580" gets points. A comma that can mean two
 * things stays as it is: between two numbers it parts them.
 */
export function plainNumbers(line: string): string {
  const isGrouped = /\d{1,3},\d{3},\d{3}\b/.test(line) || /\b\d{1,3},\d{3}\.\d/.test(line);
  if (isGrouped) return line.replace(/(?<![\d.])\d{1,3}(?:,\d{3})+(?!\d)/g, (number) => number.replaceAll(",", ""));
  // "38,2914; -122,4580", "38,2914 -122,4580" and "38,2914, -122,4580": two numbers with a comma each, and no point.
  const number = String.raw`[+-]?\d{1,8},\d+`;
  const isDecimal = new RegExp(`${number}[^\\d,]*(?:[;\\t]|,?\\s)[^\\d,]*${number}`).test(line) && !/\d\.\d/.test(line);
  return isDecimal ? line.replace(/(\d),(\d)/g, "$1.$2") : line;
}

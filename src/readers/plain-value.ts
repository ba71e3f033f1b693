/** A text as a number where it is written as numbers are ("14", "-3.5"), else as it is: "014" and "1e5" are names. */
export function plainValue(text: string): string | number {
  const number = Number(text);
  return text !== "" && Number.isFinite(number) && String(number) === text ? number : text;
}

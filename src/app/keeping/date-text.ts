/** A time as the person's own locale writes it. */
export function dateText(at: number): string {
  return new Date(at).toLocaleString(undefined, { dateStyle: "medium", timeStyle: "short" });
}

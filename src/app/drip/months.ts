import { monthNames } from "../../core/drip/season/months.ts";

/** "mid April" for 4.5: a month with parts, as words. */
export function monthText(month: number): string {
  const name = monthNames[(((Math.floor(month) - 1) % 12) + 12) % 12] ?? "";
  const part = month - Math.floor(month);
  const when = part < 0.25 ? "early" : part < 0.75 ? "mid" : "late";
  return `${when} ${name}`;
}

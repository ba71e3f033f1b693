import type { Revision } from "./records.ts";

const minute_ms = 60_000;
const spans_ms = [minute_ms, 10 * minute_ms, 60 * minute_ms, 1440 * minute_ms];
const newestKept = 2;
const spansKept = 2;

/**
 * Which of the kept texts stay, oldest first, ten at most: the newest two, and the first of each of the last two minutes, tens of minutes,
 * hours and days in which anything was kept. The first of a day is also the first of its hour and its minute, so it is still there when
 * the day is over, however much was kept in between.
 */
export function thinRevisions(revisions: readonly Revision[]): readonly Revision[] {
  const ordered = [...revisions].sort((a, b) => a.revision - b.revision);
  const staying = new Set(ordered.slice(-newestKept));
  for (const span_ms of spans_ms) {
    const firsts = new Map<number, Revision>();
    for (const each of ordered) {
      const span = Math.floor(each.at / span_ms);
      if (!firsts.has(span)) firsts.set(span, each);
    }
    for (const first of [...firsts.values()].slice(-spansKept)) staying.add(first);
  }
  return ordered.filter((each) => staying.has(each));
}

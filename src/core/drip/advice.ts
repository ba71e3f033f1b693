import type { Phrase } from "../finding.ts";
import {
  type Change,
  chosenPipes,
  compensatingEmitters,
  higherRegulators,
  largerEmitters,
  longerHours,
  moreSets,
  smallerEmitters,
  widerHose,
} from "./advice-changes.ts";
import { type AdviceNumbers, adviceNumbers, isBetter, isEnough } from "./advice-numbers.ts";
import { tankOrPump } from "./advice-sources.ts";
import type { Watering, WateringOf } from "./watering.ts";
import type { WateringJob } from "./watering-job.ts";

/** Something to do when the water falls short: settings to change, and what comes of it. */
export interface Advice extends Pick<Change, "id" | "edits" | "note"> {
  readonly name: Phrase;
  readonly before: AdviceNumbers;
  readonly after: AdviceNumbers;
  /** Nothing is missing any more. */
  readonly isEnough: boolean;
}

/**
 * What helps where the water falls short (head, hours or evenness), the least trouble first: longer hours, more sets, larger emitters where only
 * time is missing, smaller emitters, higher regulators, larger pipe and hose, pressure-compensating emitters, a pump or a tank with one. Each is worked out with `waterRows` by itself; of several sizes the first
 * that is enough, else the one that helps most. Nothing while the water is not known or where there is enough.
 */
export function adviceOf(job: WateringJob, watering: Watering | null, waterRows: WateringOf): readonly Advice[] {
  const before = adviceNumbers(job, watering);
  if (watering === null || before === null || isEnough(before)) return [];
  const steps: readonly (readonly Change[])[] = [
    longerHours(job, before),
    moreSets(job),
    largerEmitters(job, before),
    smallerEmitters(job),
    higherRegulators(job, watering),
    chosenPipes(job),
    widerHose(job),
    compensatingEmitters(job),
    tankOrPump(job, watering, before),
  ];
  return steps.flatMap((changes) => {
    const found = best(changes, before, waterRows);
    return found === null ? [] : [found];
  });
}

function best(changes: readonly Change[], before: AdviceNumbers, waterRows: WateringOf): Advice | null {
  let found: Advice | null = null;
  for (const { id, name, edits, note, job } of changes) {
    const after = adviceNumbers(job, waterRows(job));
    if (after === null || !isBetter(found?.after ?? before, after)) continue;
    found = { id, name: name(before, after), edits, note, before, after, isEnough: isEnough(after) };
    if (found.isEnough) break;
  }
  return found;
}

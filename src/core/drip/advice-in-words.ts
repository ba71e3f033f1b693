import { type Phrase, quantity, say } from "../finding.ts";
import { pressureOf_kpa } from "../hydraulics/pressure-head.ts";
import type { Advice } from "./advice.ts";
import { setsNamed } from "./advice-changes.ts";
import type { AdviceNumbers } from "./advice-numbers.ts";

/** What comes of a piece of advice, beside what is now: "2 sets (4 now), 9.5 h a day at peak (19 h now), …", and whether that is enough. */
export function adviceInWords({ before, after, isEnough }: Advice): Phrase {
  const parts: readonly Phrase[] = [
    beside(say`${setsNamed(after.sets)}`, say`${before.sets}`),
    beside(say`${flow(after)} at a time`, say`${flow(before)}`),
    beside(say`least spare pressure ${spare(after)}`, say`${spare(before)}`),
    beside(
      say`evenness ${quantity("ratio", rounded(after.evenness_ratio))}`,
      say`${quantity("ratio", rounded(before.evenness_ratio))}`,
    ),
    ...hours("usually", before.usual_h, after.usual_h),
    ...hours("at peak", before.peak_h, after.peak_h),
  ];
  return [
    ...parts.flatMap((part, i) => (i === 0 ? part : [", ", ...part])),
    isEnough
      ? ". That is enough."
      : isUsuallyEnough(after)
        ? ". That is enough usually, not at peak."
        : ". That helps, but is not enough by itself.",
  ];
}

function isUsuallyEnough({ missing: { head_m, usual_h, evenness_ratio, day_l } }: AdviceNumbers): boolean {
  return head_m + usual_h + evenness_ratio + day_l === 0;
}

function beside(after: Phrase, before: Phrase): Phrase {
  return [...after, " (", ...before, " now)"];
}

function flow({ flow_lps }: AdviceNumbers) {
  return quantity("flow", flow_lps * 3600);
}

function spare({ spare_m }: AdviceNumbers) {
  return quantity("pressure", pressureOf_kpa(spare_m));
}

function hours(when: string, before_h: number | null, after_h: number | null): readonly Phrase[] {
  if (before_h === null || after_h === null) return [];
  return [beside(say`${quantity("time", after_h)} a day ${when}`, say`${quantity("time", before_h)}`)];
}

/** A per cent is close enough. */
function rounded(ratio: number): number {
  return Math.round(ratio * 100) / 100;
}

import { type Phrase, quantity, say } from "../../core/finding.ts";
import type { CutAnswer } from "../../core/materials/cutting/cut-plan.ts";
import { count } from "../strip/count.ts";
import { money } from "./money.ts";

/** What is bought for one way of cutting, and how often it is joined: "12 coils of 1,000 ft to buy, 3 joins". */
export function boughtText({ bought, joins }: Pick<CutAnswer, "bought" | "joins">): Phrase {
  const coils = bought.flatMap(({ length_m, count: number }, i): Phrase => {
    return say`${i === 0 ? "" : " and "}${count(number, "coil")} of ${quantity("length", length_m)}`;
  });
  const joined = joins === 0 ? "no joins" : count(joins, "join");
  return bought.length === 0 ? say`Nothing to buy, ${joined}` : [...coils, ...say` to buy, ${joined}`];
}

/** How good an answer is known to be, in honest words. */
export function boundText({ bound, boughtCount, price, isOptimal }: CutAnswer, currency: string | null): string {
  const by = boundWords[bound.by];
  if (boughtCount === 0) return "";
  if (isOptimal) {
    return price === null || bound.coils === boughtCount
      ? `Fewer can not do: at least ${count(bound.coils, "coil")} ${by}.`
      : `Cheaper can not be had: at least ${money(bound.least, currency)} ${by}.`;
  }
  return price === null
    ? `At least ${count(bound.coils, "coil")} ${by}; whether fewer than ${boughtCount} can do is not known.`
    : `At least ${money(bound.least, currency)} ${by}; whether it goes cheaper is not known.`;
}

const boundWords: Readonly<Record<CutAnswer["bound"]["by"], string>> = {
  length: "by the total length",
  pairs: "by which runs can share a coil",
  "linear-program": "even if coils could be shared out in fractions",
  search: "after every way was tried",
};

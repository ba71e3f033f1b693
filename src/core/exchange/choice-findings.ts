import type { Finding } from "../finding.ts";
import { type HandOverChoice, usualChoice } from "./choice.ts";
import { askedChoices, type Format, type FormatChoice } from "./format.ts";
import { choiceNotUsed, choiceOutOfRange, namingTokenUnknown, notInFormat } from "./hand-over-findings.ts";
import { piecesOf } from "./name-pattern.ts";

/** What a choice asks for that a format has not, and what cannot be done at all; nothing of it is dropped silently. */
export function choiceFindings(choice: HandOverChoice, format: Format): readonly Finding[] {
  const { of, naming, pointsAFile, pegBeyond_m } = choice;
  const strangers = [...new Set(of)].filter((thing) => !format.holds.includes(thing));
  const { unknown } = piecesOf(naming ?? "");
  const unused = isAsked(choice).filter((asked) => !format.choices.includes(asked));
  const isPegWrong = of.includes("pegs") && !(pegBeyond_m >= 0 && pegBeyond_m <= furthestPeg_m);
  return [
    ...(strangers.length > 0 ? [notInFormat(strangers, format, strangers.length === new Set(of).size)] : []),
    ...(unknown.length > 0 ? [namingTokenUnknown(unknown)] : []),
    ...(pointsAFile !== null && !(Number.isInteger(pointsAFile) && pointsAFile > 0)
      ? [choiceOutOfRange("pointsAFile", pointsAFile)]
      : []),
    ...(isPegWrong ? [choiceOutOfRange("pegBeyond_m", pegBeyond_m)] : []),
    ...(unused.length > 0 ? [choiceNotUsed(unused, format)] : []),
  ];
}

/** Further out a peg is on someone else's ground. */
const furthestPeg_m = 100;

/** Choices that are other than usual. */
function isAsked(choice: HandOverChoice): readonly FormatChoice[] {
  return askedChoices.filter((each) => choice[each] !== usualChoice[each]);
}

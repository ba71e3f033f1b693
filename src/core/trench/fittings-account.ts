import { type Account, account, accountInWords, commonPractice, geometry, input, remark } from "../account.ts";
import { quantity, say } from "../finding.ts";
import type { TrenchSettings } from "../project/project.ts";
import type { ProfilePoint, Trench, TrenchPart } from "./trench.ts";

/** What is counted by the piece. */
export function fittingsOf({ parts }: Pick<Trench, "parts">): readonly TrenchPart[] {
  return parts.filter(({ unit, quantity: number }) => unit === "pieces" && number > 0);
}

/** How the number of fittings came about. */
export function fittingsAccount(trench: Pick<Trench, "parts">): Account {
  return account(
    {
      formula: say`Everything in the trench that is counted by the piece, added up; each is a line of the shopping list.`,
      inputs: fittingsOf(trench).map(({ kind, article, quantity: number }) =>
        input(`${kind.replaceAll("-", " ")} (${article})`, "count", number),
      ),
      source: commonPractice,
    },
    (...numbers) => numbers.reduce((sum, each) => sum + each, 0),
  );
}

/** Where and why the trench is deeper than its usual depth, in words. */
export function deepestAccount({ grade_ratio }: TrenchSettings): Account {
  return accountInWords({
    formula: say`The bottom is given its least fall: where the ground falls less or rises, the trench goes deeper than it would at an even depth.`,
    inputs: [remark("Least fall", grade_ratio === null ? "none" : say`${quantity("ratio", grade_ratio)}`)],
    source: geometry,
  });
}

/** Why water gathers at a low point, in words. */
export function lowPointAccount({ by_m, trapped_l }: ProfilePoint, { leastLow_m }: TrenchSettings): Account {
  return accountInWords({
    formula: say`The pipe falls to here from both sides. Measured from the lower of its two shoulders, which is where water runs on.`,
    inputs: [
      remark("Below its lower shoulder", say`${quantity("length", by_m)}`),
      remark("Stays in the pipe", say`${quantity("volume", trapped_l)}`),
      remark("Drained from", say`${quantity("length", leastLow_m)}`),
    ],
    source: geometry,
  });
}

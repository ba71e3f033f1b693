import type { HandOverChoice } from "../../core/exchange/choice.ts";
import type { Format } from "../../core/exchange/format.ts";
import type { Plan } from "../../core/plan.ts";
import { useStore } from "../store-context.ts";
import { chooseForFormat, handOverChoicesOf } from "./hand-over-choices.ts";
import { namingExample, usualPattern } from "./naming-example.ts";
import { TextChoice } from "./text-choice.tsx";
import { wholeNumber } from "./whole-number.ts";

interface NamingChoiceProps {
  readonly plan: Plan;
  readonly format: Format;
  readonly choice: HandOverChoice;
}

/** How things are called in the files: the pattern with an example, the longest name, and how many points go into one file. */
export function NamingChoice({ plan, format, choice }: NamingChoiceProps) {
  const choices = handOverChoicesOf(useStore());
  const has = (what: Format["choices"][number]) => format.choices.includes(what);
  const takeNumber = (part: "nameLength" | "pointsAFile", words: string) => (typed: string) => {
    const number = wholeNumber(typed);
    if (number === undefined) return words;
    chooseForFormat(choices, { [part]: number });
    return null;
  };
  return (
    <>
      {has("naming") && (
        <TextChoice
          key={`${format.name} names`}
          label="Names"
          value={choice.naming ?? ""}
          usual={usualPattern(plan, format)}
          hint={namingExample(plan, format, choice) ?? undefined}
          take={(typed) => {
            chooseForFormat(choices, { naming: typed.trim() === "" ? null : typed.trim() });
            return null;
          }}
        />
      )}
      {has("nameLength") && (
        <TextChoice
          key={`${format.name} length`}
          label="Longest name, letters"
          value={choice.nameLength === null ? "" : String(choice.nameLength)}
          usual={format.nameLength === null ? "any" : String(format.nameLength)}
          take={takeNumber("nameLength", "A whole number of letters is wanted; empty is as usual.")}
        />
      )}
      {has("pointsAFile") && (
        <TextChoice
          key={`${format.name} points`}
          label="Points in one file, at most"
          value={choice.pointsAFile === null ? "" : String(choice.pointsAFile)}
          usual="any"
          hint="older handhelds take 500; what is more goes into further files"
          take={takeNumber("pointsAFile", "A whole number of points is wanted; empty is any.")}
        />
      )}
    </>
  );
}

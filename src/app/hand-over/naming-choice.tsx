import type { HandOverChoice } from "../../core/exchange/choice.ts";
import { choiceFindings } from "../../core/exchange/choice-findings.ts";
import type { Format } from "../../core/exchange/format.ts";
import type { Plan } from "../../core/plan.ts";
import { useStore } from "../store-context.ts";
import { firstError } from "./beside-fields.ts";
import { chooseForFormat, handOverChoicesOf } from "./hand-over-choices.ts";
import { namingExample, usualPattern } from "./naming-example.ts";
import { TextChoice } from "./text-choice.tsx";

interface NamingChoiceProps {
  readonly plan: Plan;
  readonly format: Format;
  readonly choice: HandOverChoice;
}

/** How things are called in the files: the pattern with an example, the longest name, and how many points go into one file. */
export function NamingChoice({ plan, format, choice }: NamingChoiceProps) {
  const store = useStore();
  const choices = handOverChoicesOf(store);
  const has = (what: Format["choices"][number]) => format.choices.includes(what);
  const wrong = choiceFindings(choice, format).filter(({ code }) => code === "exchange/naming-token-unknown");
  const takeNumber = (part: "nameLength" | "pointsAFile") => (typed: string) => {
    const digits = typed.replace(/\D/g, "").slice(0, 7);
    chooseForFormat(choices, { [part]: digits === "" ? null : Number(digits) });
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
          refusal={firstError(wrong, store.units.value)}
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
          take={takeNumber("nameLength")}
        />
      )}
      {has("pointsAFile") && (
        <TextChoice
          key={`${format.name} points`}
          label="Points in one file"
          value={choice.pointsAFile === null ? "" : String(choice.pointsAFile)}
          usual="any number"
          hint="older handhelds take 500; more go into further files"
          take={takeNumber("pointsAFile")}
        />
      )}
    </>
  );
}

import "./coils.css";
import { useState } from "preact/hooks";
import type { CutJob } from "../../core/materials/cutting/cut-job.ts";
import type { CutAnswer, CutPlan } from "../../core/materials/cutting/cut-plan.ts";
import type { Materials } from "../../core/materials/materials.ts";
import type { Plan } from "../../core/plan.ts";
import { text } from "../../core/units.ts";
import { useStore } from "../store-context.ts";
import { count } from "../strip/count.ts";
import { boughtText, boundText } from "./answer-text.ts";
import { CoilBars } from "./coil-bars.tsx";
import { lineName } from "./line-text.ts";
import { wiresOf } from "./run-name.ts";

interface CoilPlansProps {
  readonly plan: Plan;
  readonly coils: Materials["coils"];
}

/** How coils of wire and hose are cut: for each article its answers, and the order of work of the one that is looked at. */
export function CoilPlans({ plan, coils }: CoilPlansProps) {
  const units = useStore().units.value;
  return (
    <>
      <h3>How coils are cut</h3>
      {coils.map(({ job, plan: cutting }) => {
        const line = plan.materials?.lines.find(({ article }) => article === job.article);
        const name = line ? lineName(line, units) : job.article;
        return (
          <section key={job.article} class="coil-plan" aria-label={`How ${name} is cut`}>
            <h4>{name}</h4>
            {cutting === null ? (
              <p class="aside">
                Which coil gives which run is being worked out; until then coils are counted by length.
              </p>
            ) : (
              <Answers plan={plan} job={job} cutting={cutting} />
            )}
          </section>
        );
      })}
    </>
  );
}

interface AnswersProps {
  readonly plan: Plan;
  readonly job: CutJob;
  readonly cutting: CutPlan;
}

type AnswerName = "noJoins" | "fewestCoils";

function Answers({ plan, job, cutting }: AnswersProps) {
  const { currency } = plan.project.materials;
  const [looked, setLooked] = useState<AnswerName | null>(null);
  const answers = answersOf(cutting);
  const shown = answers.find(({ name }) => name === looked) ?? answers.find(({ name }) => name === cutting.chosen);
  const units = useStore().units.value;
  return (
    <>
      {cutting.uncut.length > 0 && (
        <p class="uncut">
          <span aria-hidden="true">△ </span>
          {count(cutting.uncut.length, "run")} can be cut from no coil on the list: buy a longer coil, or allow joins.
        </p>
      )}
      {answers.length > 1 && (
        <fieldset class="answers">
          <legend class="unseen">Which way of cutting to look at</legend>
          {answers.map(({ name, label, answer }) => (
            <button
              key={name}
              type="button"
              class="quiet-button"
              aria-pressed={shown?.name === name}
              onClick={() => setLooked(name)}
            >
              {label}: {coilsText(answer)}
              {cutting.chosen === name && <small> on the list</small>}
            </button>
          ))}
        </fieldset>
      )}
      {shown && (
        <>
          <p>
            {text(boughtText(shown.answer), units)}. {boundText(shown.answer, currency)}
          </p>
          <CoilBars job={job} answer={shown.answer} rows={plan.rows?.rows ?? []} wires={wiresOf(plan, job)} />
        </>
      )}
    </>
  );
}

function answersOf({ noJoins, fewestCoils }: CutPlan): readonly {
  readonly name: AnswerName;
  readonly label: string;
  readonly answer: CutAnswer;
}[] {
  return [
    ...(noJoins ? [{ name: "noJoins", label: "No joins", answer: noJoins } as const] : []),
    ...(fewestCoils ? [{ name: "fewestCoils", label: "With joins", answer: fewestCoils } as const] : []),
  ];
}

function coilsText({ boughtCount, joins }: CutAnswer): string {
  return joins === 0 ? count(boughtCount, "coil") : `${count(boughtCount, "coil")}, ${count(joins, "join")}`;
}

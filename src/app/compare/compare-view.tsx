import "./compare.css";
import { useId, useMemo, useRef, useState } from "preact/hooks";
import type { Finding } from "../../core/finding.ts";
import type { Plan } from "../../core/plan.ts";
import { parseProject } from "../../core/project/parse.ts";
import { text } from "../../core/units.ts";
import { comparePlans } from "../../core/variants.ts";
import { whatIfs } from "../../core/what-ifs.ts";
import { edit } from "../commands/edit.ts";
import { failureOfReading } from "../failure-of-reading.ts";
import { FileInput, projectFiles } from "../file-input.tsx";
import { useStore } from "../store-context.ts";
import { ComparedFindings } from "./compared-findings.tsx";
import { ComparedLines } from "./compared-lines.tsx";
import { createOtherPlanner, type Other, otherProject } from "./other-plan.ts";

/** This project beside a change of it, or beside another project: what is bought, what it costs, what there is to say. */
export function CompareView() {
  const store = useStore();
  const units = store.units.value;
  const plan = store.shownPlan.value;
  const [other, setOther] = useState<Other | null>(null);
  const [refused, setRefused] = useState<readonly Finding[]>([]);
  const [taken, setTaken] = useState<string | null>(null);
  const planOther = useMemo(createOtherPlanner, []);
  const right = useMemo(() => (plan && other ? planOther(plan.project, other) : null), [plan, other, planOther]);
  const comparison = useMemo(() => (plan && right?.ok ? comparePlans(plan, right.value) : null), [plan, right]);
  if (!plan) return null;
  const otherName = other?.kind === "file" ? other.name : "With the change";

  const choose = (next: Other | null): void => {
    setOther(next);
    setRefused([]);
    setTaken(null);
  };
  const takeOver = (): void => {
    if (!other) return;
    const findings = edit(store, { name: other.name }, (project) => otherProject(project, other));
    setRefused(findings);
    if (findings.length > 0) return;
    setTaken(`“${other.name}” is taken over, as one step: undo brings back what was.`);
    setOther(null);
  };
  return (
    <>
      <Choice plan={plan} other={other} onChosen={choose} onRefused={setRefused} />
      {(refused.length > 0 || (right && !right.ok)) && (
        <ul class="refusal" role="alert">
          {[...refused, ...(right && !right.ok ? right.findings : [])].map((finding, i) => (
            <li key={`${finding.code} ${i}`}>
              {text(finding.message, units)} {text(finding.remedy, units)}
            </li>
          ))}
        </ul>
      )}
      <p role="status">{taken}</p>
      {other && right?.ok && comparison && (
        <>
          <ComparedLines left={plan} right={right.value} comparison={comparison} otherName={otherName} />
          <ComparedFindings
            comparison={comparison}
            where={other.kind === "file" ? `in ${other.name}` : "with the change"}
          />
          <button type="button" class="strong-button" onClick={takeOver}>
            {other.kind === "change" ? "Take this change over" : "Put this project in place of the open one"}
          </button>
        </>
      )}
    </>
  );
}

function capital(name: string): string {
  return `${name.slice(0, 1).toUpperCase()}${name.slice(1)}`;
}

interface ChoiceProps {
  readonly plan: Plan;
  readonly other: Other | null;
  readonly onChosen: (other: Other | null) => void;
  readonly onRefused: (findings: readonly Finding[]) => void;
}

function Choice({ plan, other, onChosen, onRefused }: ChoiceProps) {
  const store = useStore();
  const id = useId();
  const input = useRef<HTMLInputElement>(null);
  const block = store.block.value;
  const changes = whatIfs(plan.project, block?.id ?? "").map(({ id, name, edits }) => ({
    id,
    name: capital(name),
    edits,
  }));
  const read = async (file: File): Promise<void> => {
    const written = await file.text().catch(() => null);
    if (written === null) {
      onRefused([failureOfReading("the browser was not allowed to read it")]);
      return;
    }
    const project = parseProject(written);
    onChosen(project.ok ? { kind: "file", name: project.value.name || file.name, project: project.value } : null);
    if (!project.ok) onRefused(project.findings);
  };
  return (
    <div class="compare-choice">
      <label for={id}>
        Beside this project
        {plan.project.blocks.length > 1 && block && <small> (changes to {block.name})</small>}
      </label>
      <select
        id={id}
        value={other === null ? "" : other.kind === "change" ? other.id : "file"}
        onChange={(event) => {
          const change = changes.find((each) => each.id === event.currentTarget.value);
          onChosen(change ? { kind: "change", ...change } : null);
        }}
      >
        <option value="">choose…</option>
        {changes.map((change) => (
          <option key={change.id} value={change.id}>
            {change.name}
          </option>
        ))}
        {other?.kind === "file" && <option value="file">{other.name}</option>}
      </select>
      <button type="button" class="quiet-button" onClick={() => input.current?.click()}>
        Another project file
      </button>
      <FileInput field={input} accept={projectFiles} take={(file) => void read(file)} />
    </div>
  );
}

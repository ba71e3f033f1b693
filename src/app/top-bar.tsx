import { useId } from "preact/hooks";
import type { UnitSystem } from "../core/units.ts";
import { KeepingStatus } from "./keeping/keeping-status.tsx";
import { ProjectMenu } from "./keeping/project-menu.tsx";
import { ProjectName } from "./project-name.tsx";
import { StepButtons } from "./step-buttons.tsx";
import { useStore } from "./store-context.ts";
import { findingsInWords, severitySigns, toldFindings } from "./strip/told-findings.ts";
import { words } from "./words.ts";

interface TopBarProps {
  readonly areNotesOpen: boolean;
  readonly onNotes: () => void;
}

/** Name of the project, steps back and forward, units, warnings, and the way to another file. */
export function TopBar({ areNotesOpen, onNotes }: TopBarProps) {
  return (
    <header class="top-bar">
      <ProjectName />
      <StepButtons />
      <UnitSwitch />
      <NotesButton isOpen={areNotesOpen} onClick={onNotes} />
      <KeepingStatus />
      <ProjectMenu />
    </header>
  );
}

/** How much there is to be told; opens the list. */
function NotesButton({ isOpen, onClick }: { readonly isOpen: boolean; readonly onClick: () => void }) {
  const findings = toldFindings(useStore().shownPlan.value);
  const worst = findings[0]?.severity ?? "note";
  const grave = findings.filter(({ severity }) => severity !== "note").length;
  return (
    <button
      type="button"
      class={`notes-button mark-${worst}`}
      aria-expanded={isOpen}
      aria-controls={isOpen ? "notes-panel" : undefined}
      title={findingsInWords(findings) ?? "Nothing to say"}
      onClick={onClick}
    >
      <span aria-hidden="true">{severitySigns[worst]} </span>
      {grave > 0 ? grave : findings.length}
      <span class="unseen"> {grave > 0 ? "warnings" : "notes"}</span>
    </button>
  );
}

const systems: readonly { readonly value: UnitSystem; readonly label: string }[] = [
  { value: "metric", label: words.metric },
  { value: "us", label: words.us },
];

function UnitSwitch() {
  const store = useStore();
  const name = useId();
  return (
    <fieldset class="unit-switch">
      <legend class="unseen">{words.units}</legend>
      {systems.map(({ value, label }) => (
        <label key={value}>
          <input
            type="radio"
            name={name}
            checked={(store.units.value === "us") === (value === "us")}
            onChange={() => {
              // What the file says of pressures (bar, metres of water) comes back with metric.
              const own = store.project.peek()?.units ?? value;
              store.units.value = value === "metric" && own !== "us" ? own : value;
            }}
          />
          <span>{label}</span>
        </label>
      ))}
    </fieldset>
  );
}

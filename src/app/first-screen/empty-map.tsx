import { useId, useState } from "preact/hooks";
import type { UnitSystem } from "../../core/units.ts";
import { newProject } from "../commands/new-project.ts";
import { useStore } from "../store-context.ts";
import { words } from "../words.ts";

interface EmptyMapProps {
  readonly onChosen?: () => void;
}

/** Begins with nothing drawn, in units of one's choice. */
export function EmptyMap({ onChosen }: EmptyMapProps) {
  const store = useStore();
  const [units, setUnits] = useState<UnitSystem>(unitsOf(navigator.language));
  const name = useId();
  return (
    <div class="empty-map">
      <button
        type="button"
        onClick={() => {
          onChosen?.();
          newProject(store, units);
        }}
      >
        Start with an empty map
      </button>
      <fieldset class="unit-switch">
        <legend class="unseen">Units of the empty map</legend>
        {choices.map(({ value, label }) => (
          <label key={value}>
            <input type="radio" name={name} checked={units === value} onChange={() => setUnits(value)} />
            <span>{label}</span>
          </label>
        ))}
      </fieldset>
    </div>
  );
}

const choices: readonly { readonly value: UnitSystem; readonly label: string }[] = [
  { value: "metric", label: words.metric },
  { value: "us", label: words.us },
];

/** The units people of a locale measure ground in. */
function unitsOf(locale: string): UnitSystem {
  return /^en-US\b/i.test(locale) ? "us" : "metric";
}

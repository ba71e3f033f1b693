import type { UnitSystem } from "../../core/units.ts";
import { useOwnId } from "./own-id.ts";

/** The units of a project that begins with what is brought in. */
export function UnitChoice({
  units,
  onUnits,
}: {
  readonly units: UnitSystem;
  readonly onUnits: (units: UnitSystem) => void;
}) {
  const name = useOwnId();
  const choices = [
    ["metric", "Metric"],
    ["us", "US"],
  ] as const;
  return (
    <fieldset class="unit-switch">
      <legend class="unseen">Units of the new project</legend>
      {choices.map(([value, label]) => (
        <label key={value}>
          <input type="radio" name={name} checked={units === value} onChange={() => onUnits(value)} />
          <span>{label}</span>
        </label>
      ))}
    </fieldset>
  );
}

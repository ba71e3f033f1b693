import { useId } from "preact/hooks";
import type { UnitSystem } from "../../core/units.ts";
import { useStore } from "../store-context.ts";

const choices: readonly { readonly value: UnitSystem; readonly label: string }[] = [
  { value: "metric", label: "kPa" },
  { value: "metric-bar", label: "bar" },
  { value: "metric-head", label: "metres of water" },
];

/** In which unit pressures are shown; US units have one only. As the switch at the top, this changes what is shown, not the file. */
export function PressureUnits() {
  const { units } = useStore();
  const id = useId();
  if (units.value === "us") return null;
  return (
    <div class="field field-choice">
      <label for={id}>Pressures are shown in</label>
      <select
        id={id}
        value={units.value}
        onChange={(event) => {
          const chosen = choices.find(({ value }) => value === event.currentTarget.value);
          if (chosen) units.value = chosen.value;
        }}
      >
        {choices.map(({ value, label }) => (
          <option key={value} value={value}>
            {label}
          </option>
        ))}
      </select>
    </div>
  );
}

import type { ComponentChildren } from "preact";
import { useId } from "preact/hooks";
import type { DrawnThing } from "../../core/drawing/drawn.ts";
import type { Role } from "../../core/project/project.ts";
import { useStore } from "../store-context.ts";
import { CellField } from "./cell-field.tsx";
import { setProperty } from "./thing-edits.ts";
import { statedLength, typedLength } from "./typed-length.ts";

interface LengthProperty {
  readonly name: string;
  readonly label: string;
  readonly usual: string;
}

const distance: LengthProperty = { name: "distance", label: "Distance kept", usual: "as usual" };
const trenchDistance: LengthProperty = { name: "trenchDistance", label: "Trench keeps from it", usual: "as usual" };
const lengths: Readonly<Partial<Record<Role, readonly LengthProperty[]>>> = {
  parcel: [{ name: "setback", label: "Setback of this parcel", usual: "as usual" }],
  obstacle: [distance, trenchDistance],
  "no-plant": [distance, trenchDistance],
  "cross-alley": [{ name: "width", label: "Width", usual: "as usual" }],
  row: [{ name: "tapedLength", label: "Length by tape", usual: "as drawn" }],
  elevation: [{ name: "height", label: "Height", usual: "not known" }],
};
const outlines = [
  { value: "", label: "not stated" },
  { value: "surveyed", label: "surveyed" },
  { value: "drawn", label: "drawn on a map" },
  { value: "walked", label: "walked: a sketch" },
] as const;

const crossings = [
  { value: "", label: "not said: never" },
  { value: "never", label: "never" },
  { value: "square", label: "square to it only" },
  { value: "free", label: "as if it were not there" },
] as const;

/** What can be said of a drawn thing beside its corners. */
export function ThingFields({ thing }: { readonly thing: DrawnThing }) {
  const store = useStore();
  const { key, properties, role } = thing;
  const shown = role === null ? [] : (lengths[role] ?? []);
  const metres = 3;
  return (
    <div class="fields">
      <CellField
        label="Name"
        shown={thing.name ?? ""}
        apply={(typed) => setProperty(store, key, "name", "Name", typed === "" ? null : typed)}
        isLabelled
      />
      {shown.map(({ name, label, usual }) => (
        <CellField
          key={name}
          label={label}
          shown={statedLength(store, properties[name])}
          placeholder={usual}
          apply={(typed) => {
            const meant = typedLength(store, typed, metres);
            return meant.ok ? setProperty(store, key, name, label, meant.value) : meant.sentence;
          }}
          isLabelled
        />
      ))}
      {role === "row" && (
        <CellField
          label="Row it stands for"
          shown={typeof properties.row === "string" ? properties.row : ""}
          placeholder="where it lies"
          apply={(typed) => setProperty(store, key, "row", "Row", typed === "" ? null : typed)}
          isLabelled
        />
      )}
      {(role === "obstacle" || role === "no-plant") && (
        <label class="check-field">
          <input
            type="checkbox"
            checked={properties.wiresPass === true}
            onChange={(event) =>
              setProperty(store, key, "wiresPass", "Wires pass", event.currentTarget.checked ? true : null)
            }
          />
          Wires run past it, vines are skipped
        </label>
      )}
      {(role === "obstacle" || role === "no-plant") && (
        <ChoiceOfThing thing={thing} name="crossing" label="The main line may cross it" choices={crossings} />
      )}
      {role === "parcel" && (
        <ChoiceOfThing thing={thing} name="outline" label="Outline" choices={outlines}>
          {properties.outline === "walked" && (
            <span class="field-note">A sketch: good for planning, not for staking. Tape the sides, or survey it.</span>
          )}
        </ChoiceOfThing>
      )}
    </div>
  );
}

interface ChoiceProps {
  readonly thing: DrawnThing;
  readonly name: string;
  readonly label: string;
  readonly choices: readonly { readonly value: string; readonly label: string }[];
  readonly children?: ComponentChildren;
}

/** One of a few words said of a thing, or none. */
function ChoiceOfThing({ thing: { key, properties }, name, label, choices, children }: ChoiceProps) {
  const store = useStore();
  const id = useId();
  const said = properties[name];
  return (
    <div class="field field-choice">
      <label for={id}>{label}</label>
      <select
        id={id}
        value={typeof said === "string" ? said : ""}
        onChange={({ currentTarget: { value } }) => setProperty(store, key, name, label, value === "" ? null : value)}
      >
        {choices.map(({ value, label: words }) => (
          <option key={value} value={value}>
            {words}
          </option>
        ))}
      </select>
      {children}
    </div>
  );
}

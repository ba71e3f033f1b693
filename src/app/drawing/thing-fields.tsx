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
const lengths: Readonly<Partial<Record<Role, readonly LengthProperty[]>>> = {
  parcel: [{ name: "setback", label: "Setback of this parcel", usual: "as usual" }],
  obstacle: [distance],
  "no-plant": [distance],
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

/** What can be said of a drawn thing beside its corners. */
export function ThingFields({ thing }: { readonly thing: DrawnThing }) {
  const store = useStore();
  const id = useId();
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
      {role === "parcel" && (
        <div class="field field-choice">
          <label for={id}>Outline</label>
          <select
            id={id}
            value={typeof properties.outline === "string" ? properties.outline : ""}
            onChange={({ currentTarget: { value } }) =>
              setProperty(store, key, "outline", "Outline", value === "" ? null : value)
            }
          >
            {outlines.map(({ value, label }) => (
              <option key={value} value={value}>
                {label}
              </option>
            ))}
          </select>
          {properties.outline === "walked" && (
            <span class="field-note">A sketch: good for planning, not for staking. Tape the sides, or survey it.</span>
          )}
        </div>
      )}
    </div>
  );
}

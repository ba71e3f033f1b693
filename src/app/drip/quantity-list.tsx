import { useId, useState } from "preact/hooks";
import type { Finding } from "../../core/finding.ts";
import type { JsonObject } from "../../core/project/project.ts";
import { parseQuantity, type QuantityKind, text } from "../../core/units.ts";
import { changeSetting } from "../commands/change-setting.ts";
import type { StepName } from "../commands/edit.ts";
import { useStore } from "../store-context.ts";
import { OptionalQuantityField } from "../strip/optional-quantity-field.tsx";
import { QuantityField } from "../strip/quantity-field.tsx";
import { withShownUnit } from "../typed-quantity.ts";
import { listAsWritten, withEntryMember } from "./written-list.ts";

export interface QuantityColumn {
  /** What the file calls it. */
  readonly member: string;
  /** Over the column, and over the field of a new entry. */
  readonly head: string;
  readonly kind: QuantityKind;
  /** A number alone takes the unit that this one is shown in. */
  readonly like: number;
  readonly isOptional?: boolean;
}

interface QuantityListProps {
  /** One of them: "bucket test". */
  readonly name: string;
  readonly path: string;
  readonly columns: readonly QuantityColumn[];
  /** What is in force, SI, a number a column. */
  readonly entries: readonly (readonly (number | null)[])[];
}

/** A list of measured things, a few quantities each: changed in place, taken out, added to. */
export function QuantityList({ name, path, columns, entries }: QuantityListProps) {
  const store = useStore();
  const written = () =>
    listAsWritten(
      store,
      path,
      entries.map((entry) => inSi(columns, entry)),
    );
  const write = (list: readonly JsonObject[], step: StepName): readonly Finding[] =>
    changeSetting(store, path, list.length === 0 ? null : list, step);
  return (
    <>
      {entries.length > 0 && (
        <table class="quantity-list">
          <caption class="unseen">{name}s</caption>
          <thead>
            <tr>
              {columns.map(({ member, head }) => (
                <th key={member} scope="col">
                  {head}
                </th>
              ))}
              <td />
            </tr>
          </thead>
          <tbody>
            {entries.map((entry, at) => (
              // An entry has no name of its own; its place in the list is what the file knows it by.
              <tr key={`${at} of ${entries.length}`}>
                {columns.map((column, c) => (
                  <td key={column.member}>
                    <Cell
                      label={`${column.head}, ${name} ${at + 1}`}
                      column={column}
                      value={entry[c] ?? null}
                      change={(meant, step) =>
                        write(
                          written().map((each, i) => (i === at ? withEntryMember(each, column.member, meant) : each)),
                          step,
                        )
                      }
                    />
                  </td>
                ))}
                <td>
                  <button
                    type="button"
                    class="quiet-button"
                    aria-label={`Take out ${name} ${at + 1}`}
                    title="Take out"
                    onClick={() =>
                      write(
                        written().filter((_, i) => i !== at),
                        { name: `Take out ${name} ${at + 1}` },
                      )
                    }
                  >
                    ×
                  </button>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <AddEntry
        name={name}
        columns={columns}
        add={(entry) => write([...written(), entry], { name: `Add a ${name}` })}
      />
    </>
  );
}

interface CellProps {
  readonly label: string;
  readonly column: QuantityColumn;
  readonly value: number | null;
  readonly change: (meant: string | null, step: StepName) => readonly Finding[];
}

function Cell({ label, column: { kind, like, isOptional }, value, change }: CellProps) {
  if (isOptional) {
    return (
      <OptionalQuantityField
        label={label}
        kind={kind}
        value={value}
        like={like}
        path=""
        without="not read"
        isCompact
        change={(meant, step) => change(typeof meant === "string" ? meant : null, step)}
      />
    );
  }
  return <QuantityField label={label} kind={kind} value={value ?? 0} path="" isCompact change={change} />;
}

interface AddEntryProps {
  readonly name: string;
  readonly columns: readonly QuantityColumn[];
  readonly add: (entry: JsonObject) => readonly Finding[];
}

function AddEntry({ name, columns, add }: AddEntryProps) {
  const store = useStore();
  const units = store.units.value;
  const id = useId();
  const [typed, setTyped] = useState<readonly string[]>(columns.map(() => ""));
  const [refusal, setRefusal] = useState<string | null>(null);
  const attempt = (): string | null => {
    const entry: Record<string, string> = {};
    for (const [c, { member, head, kind, like, isOptional }] of columns.entries()) {
      const own = typed[c] ?? "";
      if (own.trim() === "") {
        if (isOptional) continue;
        return `“${head}” is still empty.`;
      }
      const meant = withShownUnit(own, kind, like, units);
      const parsed = parseQuantity(kind, meant);
      if (!parsed.ok) return `“${own}” was not understood: ${parsed.reason}.`;
      entry[member] = meant;
    }
    const first = add(entry)[0];
    return first ? `${text(first.message, units)} ${text(first.remedy, units)}` : null;
  };
  return (
    <form
      class="add-entry"
      onSubmit={(event) => {
        event.preventDefault();
        const refused = attempt();
        setRefusal(refused);
        if (refused === null) setTyped(columns.map(() => ""));
      }}
    >
      {columns.map(({ member, head, isOptional }, c) => (
        <div key={member}>
          <label for={`${id}-${member}`}>{head}</label>
          <input
            id={`${id}-${member}`}
            class="entry-input"
            type="text"
            autocomplete="off"
            spellcheck={false}
            placeholder={isOptional ? "if read" : undefined}
            value={typed[c] ?? ""}
            aria-describedby={refusal === null ? undefined : `${id}-refusal`}
            onInput={(event) => {
              const now = event.currentTarget.value;
              setTyped((before) => before.map((each, i) => (i === c ? now : each)));
            }}
          />
        </div>
      ))}
      <button type="submit" class="quiet-button" aria-label={`Add a ${name}`}>
        Add
      </button>
      {refusal && (
        <span class="field-refusal" id={`${id}-refusal`} role="alert">
          {refusal}
        </span>
      )}
    </form>
  );
}

function inSi(columns: readonly QuantityColumn[], entry: readonly (number | null)[]): JsonObject {
  return Object.fromEntries(
    columns.flatMap(({ member }, c): [string, number][] => {
      const value = entry[c] ?? null;
      return value === null ? [] : [[member, value]];
    }),
  );
}

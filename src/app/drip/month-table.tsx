import { useRef, useState } from "preact/hooks";
import { monthNames } from "../../core/drip/season/months.ts";
import { formatQuantity, parseQuantity, type QuantityKind, text } from "../../core/units.ts";
import { changeSetting } from "../commands/change-setting.ts";
import { useStore } from "../store-context.ts";
import { QuantityField } from "../strip/quantity-field.tsx";
import { withShownUnit } from "../typed-quantity.ts";
import { statedAt } from "./written-list.ts";

export interface MonthColumn {
  /** Where it stands in the file: "season.reference". */
  readonly path: string;
  readonly head: string;
  readonly kind: QuantityKind;
  readonly like: number;
  /** Twelve, SI; null while nothing is stated. */
  readonly values: readonly number[] | null;
}

/** A year by months, a column a thing. A column counts once all its twelve are there; several months can be pasted at once. */
export function MonthTable({ name, columns }: { readonly name: string; readonly columns: readonly MonthColumn[] }) {
  const table = useRef<HTMLTableElement>(null);
  const [drafts, setDrafts] = useState<Readonly<Record<string, readonly string[]>>>({});
  const [refusal, setRefusal] = useState<string | null>(null);
  const store = useStore();
  const units = store.units.value;
  const empty = monthNames.map(() => "");

  /** Writes the column once it is whole; returns what is wrong with it. */
  const settle = (column: MonthColumn, typed: readonly string[]): string | null => {
    if (typed.some((each) => each.trim() === "")) return null;
    const meant = typed.map((each) => withShownUnit(each, column.kind, column.like, units));
    for (const [i, each] of meant.entries()) {
      const parsed = parseQuantity(column.kind, each);
      if (!parsed.ok) return `${monthNames[i]}, “${typed[i]}”, was not understood: ${parsed.reason}.`;
    }
    const first = changeSetting(store, column.path, meant, { name: `${column.head} of the year` })[0];
    if (first) return `${text(first.message, units)} ${text(first.remedy, units)}`;
    setDrafts(({ [column.path]: _, ...others }) => others);
    return null;
  };
  const put = (column: MonthColumn, from: number, typed: readonly string[]): void => {
    const before = column.values === null ? (drafts[column.path] ?? empty) : shownOf(column);
    const now = before.map((each, i) => typed[i - from] ?? each);
    setDrafts((all) => ({ ...all, [column.path]: now }));
    setRefusal(settle(column, now));
  };
  const shownOf = ({ kind, values }: MonthColumn): readonly string[] =>
    (values ?? []).map((value) => formatQuantity(kind, value, units));
  const paste = (column: MonthColumn, month: number) => (event: ClipboardEvent) => {
    const parts = (event.clipboardData?.getData("text") ?? "").trim().split(/[\s;]+/);
    if (parts.length < 2) return;
    event.preventDefault();
    put(column, month, parts);
  };
  const down = (at: number, month: number): void => {
    const next = table.current?.querySelector(`[data-cell="${at} ${month + 1}"]`);
    if (next instanceof HTMLElement) next.focus();
  };
  return (
    <>
      <table class="months" ref={table}>
        <caption class="unseen">{name}</caption>
        <thead>
          <tr>
            <th scope="col">Month</th>
            {columns.map(({ path, head }) => (
              <th key={path} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {monthNames.map((month, m) => (
            <tr key={month}>
              <th scope="row">{month}</th>
              {columns.map((column, c) => (
                <td key={column.path} onPaste={paste(column, m)}>
                  {column.values !== null ? (
                    <QuantityField
                      label={`${column.head}, ${month}`}
                      kind={column.kind}
                      value={column.values[m] ?? 0}
                      path=""
                      isCompact
                      change={(meant, step) =>
                        changeSetting(
                          store,
                          column.path,
                          twelveAsWritten(column).map((each, i) => (i === m ? meant : each)),
                          step,
                        )
                      }
                    />
                  ) : (
                    <input
                      class="entry-input"
                      type="text"
                      autocomplete="off"
                      spellcheck={false}
                      aria-label={`${column.head}, ${month}`}
                      data-cell={`${c} ${m}`}
                      value={drafts[column.path]?.[m] ?? ""}
                      onInput={({ currentTarget: { value } }) =>
                        setDrafts((all) => ({
                          ...all,
                          [column.path]: (all[column.path] ?? empty).map((each, i) => (i === m ? value : each)),
                        }))
                      }
                      onBlur={() => setRefusal(settle(column, drafts[column.path] ?? empty))}
                      onKeyDown={(event) => {
                        if (event.key !== "Enter") return;
                        if (m < 11) down(c, m);
                        else event.currentTarget.blur();
                      }}
                    />
                  )}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      {refusal && (
        <p class="field-refusal" role="alert">
          {refusal}
        </p>
      )}
      <p class="aside">{columns.flatMap(toldOf).join(" ")}</p>
      {columns.some(({ values }) => values !== null) && (
        <p class="month-buttons">
          {columns.map((column) =>
            column.values === null ? null : (
              <button
                key={column.path}
                type="button"
                class="quiet-button"
                onClick={() => changeSetting(store, column.path, null, { name: `${column.head} not known` })}
              >
                Empty “{column.head}”
              </button>
            ),
          )}
        </p>
      )}
    </>
  );

  function toldOf(column: MonthColumn): readonly string[] {
    if (column.values !== null) return [];
    const left = (drafts[column.path] ?? empty).filter((each) => each.trim() === "").length;
    if (left === 12) return [];
    return [`“${column.head}” counts once all twelve months are there: ${left} to go.`];
  }

  function twelveAsWritten({ path, values }: MonthColumn) {
    const stated = statedAt(store, path);
    return Array.isArray(stated) && stated.length === 12 ? stated : [...(values ?? [])];
  }
}

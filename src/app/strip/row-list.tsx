import { useEffect, useRef, useState } from "preact/hooks";
import { chooseRow } from "../commands/choose-row.ts";
import { useStore } from "../store-context.ts";
import { rowCells } from "./row-cells.ts";
import { RowLine } from "./row-line.tsx";
import { rowWindow } from "./row-window.ts";

const lineHeight_px = 30;
const headHeight_px = 38;
const height_px = 270;
/** A table that is walked cell by cell. */
const grid = { role: "grid" } as const;
const columns = ["Row", "Length", "Vines", "Line posts", "Hose"] as const;

/** Every row with its length and counts, walked by arrow keys cell by cell; only the lines in view are in the page. */
export function RowList() {
  const store = useStore();
  const [scrolled_px, setScrolled] = useState(0);
  const [column, setColumn] = useState(0);
  const region = useRef<HTMLDivElement>(null);
  /** Where the keys have gone before the focus has: a second key goes on from there. */
  const ahead = useRef<readonly [row: number, cell: number] | null>(null);
  const plan = store.shownPlan.value;
  const rows = plan?.rows?.rows ?? [];
  const selected = rows.findIndex((row) => row.id === store.row.value);

  // A row that is chosen on the map or by a key comes into view here, and keeps the focus if the list has it.
  useEffect(() => {
    const box = region.current;
    if (!box || selected < 0) return;
    const top = selected * lineHeight_px;
    const room = box.clientHeight - headHeight_px;
    if (top < box.scrollTop) box.scrollTop = top;
    else if (top + lineHeight_px > box.scrollTop + room) box.scrollTop = top + lineHeight_px - room;
    if (!box.contains(document.activeElement)) {
      ahead.current = null;
      return;
    }
    requestAnimationFrame(() => {
      ahead.current = null;
      box.querySelector<HTMLElement>('.is-selected [tabindex="0"]')?.focus({ preventScroll: true });
    });
  }, [selected, column]);

  if (!plan || rows.length === 0) return <p class="aside">No row fits yet. The notes say why.</p>;
  const shown = rowWindow(rows.length, lineHeight_px, scrolled_px, height_px);
  const isShown = selected >= shown.first && selected < shown.past;
  const tabStop = isShown ? selected : Math.min(rows.length - 1, Math.ceil(scrolled_px / lineHeight_px));
  const goTo = (row: number, cell: number): void => {
    const to = [Math.min(rows.length - 1, Math.max(0, row)), Math.min(columns.length - 1, Math.max(0, cell))] as const;
    if (to[0] !== selected || to[1] !== column) ahead.current = to;
    setColumn(to[1]);
    chooseRow(store, rows[to[0]]?.id ?? null);
  };
  const move = (event: KeyboardEvent, focused: number): void => {
    const [index, cell] = ahead.current ?? [focused, column];
    const page = Math.floor(height_px / lineHeight_px) - 1;
    const far = event.ctrlKey || event.metaKey;
    const targets: Readonly<Record<string, readonly [row: number, cell: number]>> = {
      ArrowDown: [index + 1, cell],
      ArrowUp: [index - 1, cell],
      ArrowRight: [index, cell + 1],
      ArrowLeft: [index, cell - 1],
      PageDown: [index + page, cell],
      PageUp: [index - page, cell],
      Home: [far ? 0 : index, 0],
      End: [far ? rows.length - 1 : index, columns.length - 1],
    };
    const target = targets[event.key];
    if (event.key === "Escape") chooseRow(store, null);
    if (target === undefined) return;
    event.preventDefault();
    goTo(...target);
  };
  return (
    <div
      class="row-list"
      ref={region}
      style={{ maxHeight: `${height_px}px` }}
      onScroll={(event) => setScrolled(event.currentTarget.scrollTop)}
    >
      <table
        {...grid}
        aria-label="Rows"
        aria-rowcount={rows.length + 1}
        style={{ height: `${headHeight_px + rows.length * lineHeight_px}px` }}
      >
        <thead>
          <tr aria-rowindex={1}>
            {columns.map((name) => (
              <th scope="col" key={name}>
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          <tr style={{ height: `${shown.first * lineHeight_px}px` }} />
          {rows.slice(shown.first, shown.past).map((row, i) => {
            const index = shown.first + i;
            return (
              <RowLine
                key={row.id}
                id={row.id}
                index={index}
                cells={rowCells(plan, index, store.units.value)}
                isSelected={index === selected}
                tabColumn={index === tabStop ? column : null}
                onKeyDown={(event) => move(event, index)}
                onChoose={(cell, isAgain) => {
                  setColumn(cell);
                  chooseRow(store, isAgain ? null : row.id);
                }}
              />
            );
          })}
          <tr style={{ height: `${(rows.length - shown.past) * lineHeight_px}px` }} />
        </tbody>
      </table>
    </div>
  );
}

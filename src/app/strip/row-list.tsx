import { useEffect, useRef, useState } from "preact/hooks";
import { formatQuantity } from "../../core/units.ts";
import { chooseRow } from "../commands/choose-row.ts";
import { useStore } from "../store-context.ts";
import { grouped } from "./count.ts";
import { rowWindow } from "./row-window.ts";

const lineHeight_px = 30;
const headHeight_px = 38;
const height_px = 270;

/** Every row with its length and counts; only the lines in view are in the page. */
export function RowList() {
  const store = useStore();
  const [scrolled_px, setScrolled] = useState(0);
  const region = useRef<HTMLDivElement>(null);
  const plan = store.shownPlan.value;
  const rows = plan?.rows?.rows ?? [];
  const selected = rows.findIndex((row) => row.id === store.row.value);
  const units = store.units.value;

  // A row that is chosen on the map or by a key comes into view here, and keeps the focus if the list has it.
  useEffect(() => {
    const box = region.current;
    if (!box || selected < 0) return;
    const top = selected * lineHeight_px;
    const room = box.clientHeight - headHeight_px;
    if (top < box.scrollTop) box.scrollTop = top;
    else if (top + lineHeight_px > box.scrollTop + room) box.scrollTop = top + lineHeight_px - room;
    if (!box.contains(document.activeElement)) return;
    requestAnimationFrame(() =>
      box.querySelector<HTMLElement>('[aria-pressed="true"]')?.focus({ preventScroll: true }),
    );
  }, [selected]);

  if (rows.length === 0) return <p class="aside">No row fits yet. The notes below say why.</p>;
  const shown = rowWindow(rows.length, lineHeight_px, scrolled_px, height_px);
  const isShown = selected >= shown.first && selected < shown.past;
  const tabStop = isShown ? selected : Math.min(rows.length - 1, Math.ceil(scrolled_px / lineHeight_px));
  const move = (event: KeyboardEvent, index: number): void => {
    const page = Math.floor(height_px / lineHeight_px) - 1;
    const targets: Readonly<Record<string, number>> = {
      ArrowDown: index + 1,
      ArrowUp: index - 1,
      PageDown: index + page,
      PageUp: index - page,
      Home: 0,
      End: rows.length - 1,
    };
    const target = targets[event.key];
    if (event.key === "Escape") chooseRow(store, null);
    if (target === undefined) return;
    event.preventDefault();
    chooseRow(store, rows[Math.min(rows.length - 1, Math.max(0, target))]?.id ?? null);
  };
  return (
    <div
      class="row-list"
      ref={region}
      style={{ maxHeight: `${height_px}px` }}
      onScroll={(event) => setScrolled(event.currentTarget.scrollTop)}
    >
      <table aria-rowcount={rows.length + 1} style={{ height: `${headHeight_px + rows.length * lineHeight_px}px` }}>
        <thead>
          <tr aria-rowindex={1}>
            <th scope="col">Row</th>
            <th scope="col">Length</th>
            <th scope="col">Vines</th>
            <th scope="col">Line posts</th>
            <th scope="col">Hose</th>
          </tr>
        </thead>
        <tbody>
          <tr style={{ height: `${shown.first * lineHeight_px}px` }} />
          {rows.slice(shown.first, shown.past).map((row, i) => {
            const index = shown.first + i;
            const lateral_m = plan?.drip?.rows[index]?.lateral_m;
            return (
              <tr key={row.id} class={index === selected ? "is-selected" : ""} aria-rowindex={index + 2}>
                <th scope="row">
                  <button
                    type="button"
                    tabIndex={index === tabStop ? 0 : -1}
                    aria-pressed={index === selected}
                    onClick={() => chooseRow(store, index === selected ? null : row.id)}
                    onKeyDown={(event) => move(event, index)}
                  >
                    {row.id}
                  </button>
                </th>
                <td>{formatQuantity("length", row.length_m, units, 2)}</td>
                <td>{grouped(row.vines)}</td>
                <td>{grouped(row.linePosts)}</td>
                <td>{lateral_m === undefined ? "—" : formatQuantity("length", lateral_m, units, 1)}</td>
              </tr>
            );
          })}
          <tr style={{ height: `${(rows.length - shown.past) * lineHeight_px}px` }} />
        </tbody>
      </table>
    </div>
  );
}

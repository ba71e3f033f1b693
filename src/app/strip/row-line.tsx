import { Figure } from "../figure/figure.tsx";
import type { RowCell } from "./row-cells.ts";

interface RowLineProps {
  readonly id: string;
  readonly index: number;
  readonly cells: readonly RowCell[];
  readonly isSelected: boolean;
  /** The cell that the tab key reaches; null when it is in another row. */
  readonly tabColumn: number | null;
  readonly onKeyDown: (event: KeyboardEvent) => void;
  readonly onChoose: (column: number, isAgain: boolean) => void;
}

/** One line of the row table: its number chooses it, its other numbers tell how they came about. */
export function RowLine({ id, index, cells, isSelected, tabColumn, onKeyDown, onChoose }: RowLineProps) {
  const stop = (column: number) => (tabColumn === column ? 0 : -1);
  return (
    <tr
      class={isSelected ? "is-selected" : ""}
      aria-rowindex={index + 2}
      aria-selected={isSelected}
      onKeyDown={onKeyDown}
    >
      <th scope="row">
        <button type="button" tabIndex={stop(0)} aria-pressed={isSelected} onClick={() => onChoose(0, isSelected)}>
          {id}
        </button>
      </th>
      {cells.map((cell, i) => (
        <td key={cell.label}>
          <Figure {...cell} tabIndex={stop(i + 1)} onClick={() => onChoose(i + 1, false)} />
        </td>
      ))}
    </tr>
  );
}

import type { List } from "../lists/list.ts";
import type { Table, TableColumn } from "./table.ts";

/** A list as a table; its columns are numbers where all their cells are, with as many decimals as the longest has. */
export function listTable({ kind, heads, lines }: List): Table {
  return {
    name: kind,
    holds: `${lines.length} ${lines.length === 1 ? "line" : "lines"}`,
    columns: heads.map((name, i) => columnOf(name, lines, i)),
    count: lines.length,
    lines: () => lines,
  };
}

function columnOf(name: string, lines: List["lines"], i: number): TableColumn {
  let decimals = 0;
  let isNumber = false;
  for (const cells of lines) {
    const cell = cells[i] ?? null;
    if (cell === null) continue;
    if (typeof cell === "string") return { name, type: "text", isFixed: false };
    isNumber = true;
    decimals = Math.max(decimals, String(cell).split(".")[1]?.length ?? 0);
  }
  if (!isNumber) return { name, type: "text", isFixed: false };
  return decimals === 0 ? { name, type: "whole", isFixed: false } : { name, type: "number", decimals, isFixed: false };
}

import type { Column, Value } from "../layers/layer.ts";

/** One column of a table that is handed over; its unit stands in its name. */
export interface TableColumn extends Column {
  /** Of a number that is written with just so many decimals, whatever they are: places. Others are rounded already. */
  readonly isFixed: boolean;
}

/** A layer or a list as a table, for CSV and for workbooks. */
export interface Table {
  /** "vines": also the name of its file or sheet. */
  readonly name: string;
  /** "3600 vines, a line each". */
  readonly holds: string;
  readonly columns: readonly TableColumn[];
  /** How many lines, without the heads. */
  readonly count: number;
  /** One line after another, made when asked for; may be asked for again. Numbers of fixed columns are unrounded. */
  lines(): Iterable<readonly Value[]>;
}

/** A number with exactly so many decimals, without a minus before nothing; null for what is no number. */
export function fixed(value: number, decimals: number): string | null {
  if (!Number.isFinite(value)) return null;
  const text = value.toFixed(decimals);
  return /^-0\.?0*$/.test(text) ? text.slice(1) : text;
}

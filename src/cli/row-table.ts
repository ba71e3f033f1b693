import { formatQuantity, type Plan, type UnitSystem } from "../core/index.ts";
import { type Column, table } from "./table.ts";

/** Every row with its length, counts, wire and lateral, and the sum of all. Empty when there are no rows. */
export function rowTable(plan: Plan, units: UnitSystem): string {
  const { rows = [] } = plan.rows ?? {};
  const trellis = plan.trellis?.rows ?? [];
  const drip = plan.drip?.rows ?? [];
  if (rows.length === 0) return "";
  const lengths = summed((value_m) => columnLength(value_m, units));
  const counts = summed((count) => count.toLocaleString("en-US"));
  const purposes = [...new Set(trellis.flatMap((row) => Object.keys(row.wire_m)))];
  const isLevel = rows.every((row) => row.groundLength_m === row.length_m);
  const hasSlopes = rows.some((row) => row.slopeAlong_ratio !== null || row.slopeAcross_ratio !== null);
  const slopes = (head: string, values: readonly (number | null)[]): Column => ({
    head,
    cells: values.map((value) => (value === null ? "" : formatQuantity("ratio", value, units, 1))),
    isNumber: true,
  });
  const onGround = lengths(
    "on the ground",
    rows.map((row) => row.groundLength_m),
  );
  return table([
    { head: "row", cells: [...rows.map((row) => row.id), "all"] },
    lengths(
      "length",
      rows.map((row) => row.length_m),
    ),
    ...(isLevel ? [] : [onGround]),
    ...(hasSlopes
      ? [
          slopes(
            "slope along",
            rows.map((row) => row.slopeAlong_ratio),
          ),
          slopes(
            "slope across",
            rows.map((row) => row.slopeAcross_ratio),
          ),
        ]
      : []),
    counts(
      "vines",
      rows.map((row) => row.vines),
    ),
    counts(
      "line posts",
      rows.map((row) => row.linePosts),
    ),
    { head: "water at", cells: plan.mainline?.waterEnd ?? [] },
    ...purposes.map((purpose) =>
      lengths(
        `${purpose} wire`,
        trellis.map((row) => new Map(Object.entries(row.wire_m)).get(purpose) ?? 0),
      ),
    ),
    lengths(
      "lateral",
      drip.map((row) => row.lateral_m),
    ),
    counts(
      "emitters",
      drip.map((row) => row.emitters),
    ),
  ]);
}

/** A length for a column, where every cell has the same decimals: centimetres, or tenths of a foot. */
export function columnLength(length_m: number, units: UnitSystem): string {
  return formatQuantity("length", length_m, units, units === "us" ? 1 : 2);
}

/** A maker of columns of numbers that end in their sum. */
function summed(shown: (value: number) => string): (head: string, values: readonly number[]) => Column {
  return (head, values) => ({
    head,
    cells: [...values, values.reduce((sum, value) => sum + value, 0)].map(shown),
    isNumber: true,
  });
}

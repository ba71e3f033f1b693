import type { Column, Value } from "./layer.ts";

/** Values that are known as "station_m 12.345", in the order of their columns. */
export function toldValues(columns: readonly Column[], values: readonly Value[]): readonly string[] {
  return columns.flatMap(({ name, type }, i) => {
    const value = values[i] ?? null;
    if (value === null) return [];
    return type === "yes" ? [name] : [`${name} ${value}`];
  });
}

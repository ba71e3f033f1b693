import type { Block } from "../project/project.ts";
import type { Rows } from "../rows/rows.ts";
import type { MaterialCost, MaterialLine } from "./material-line.ts";

/** What the lines cost together. */
export function costOf(lines: readonly MaterialLine[]): MaterialCost {
  return lines.reduce(
    (sum, { price, mass_kg }) => ({
      price: sum.price + (price ?? 0),
      unpriced: sum.unpriced + (price === null ? 1 : 0),
      mass_kg: sum.mass_kg + (mass_kg ?? 0),
    }),
    nothing,
  );
}

/** What each row costs: its share of every line by what it needs of it, so that the rows together cost what the lines do. */
export function rowCostsOf(
  lines: readonly MaterialLine[],
  needs: readonly (readonly number[])[],
  rows: number,
): readonly MaterialCost[] {
  const costs = Array.from({ length: rows }, () => ({ ...nothing }));
  lines.forEach(({ price, mass_kg }, line) => {
    const perRow = needs[line] ?? [];
    const whole = perRow.reduce((sum, each) => sum + each, 0);
    perRow.forEach((need, row) => {
      const cost = costs[row];
      if (cost === undefined || need <= 0) return;
      costs[row] = {
        price: cost.price + ((price ?? 0) * need) / whole,
        unpriced: cost.unpriced + (price === null ? 1 : 0),
        mass_kg: cost.mass_kg + ((mass_kg ?? 0) * need) / whole,
      };
    });
  });
  return costs;
}

/** What each block costs: the sum of its rows; the lines without a price are those that one of its rows needs. */
export function blockCostsOf(
  lines: readonly MaterialLine[],
  needs: readonly (readonly number[])[],
  rowCosts: readonly MaterialCost[],
  rows: Rows,
  blocks: readonly Block[],
): readonly MaterialCost[] {
  return blocks.map(({ id }) => {
    const isOwn = (row: number) => rows.rows[row]?.block === id;
    const own = rowCosts.filter((_, row) => isOwn(row));
    return {
      price: own.reduce((sum, { price }) => sum + price, 0),
      unpriced: lines.filter(
        ({ price }, line) => price === null && needs[line]?.some((need, row) => need > 0 && isOwn(row)),
      ).length,
      mass_kg: own.reduce((sum_kg, { mass_kg }) => sum_kg + mass_kg, 0),
    };
  });
}

/** Price a vine and a square metre of planted ground; null where there is none. */
export function perVineAndArea(
  { price }: MaterialCost,
  rows: Rows,
): { readonly perVine: number | null; readonly perArea_m2: number | null } {
  const vines = rows.vines.station_m.length;
  const area_m2 = rows.blocks.reduce((sum_m2, { plantedArea_m2 }) => sum_m2 + plantedArea_m2, 0);
  return { perVine: vines > 0 ? price / vines : null, perArea_m2: area_m2 > 0 ? price / area_m2 : null };
}

const nothing: MaterialCost = { price: 0, unpriced: 0, mass_kg: 0 };

import { type Account, account, input, inputs, remark } from "../account.ts";
import { say } from "../finding.ts";
import type { Rows } from "../rows/rows.ts";
import type { MaterialLine } from "./material-line.ts";
import type { Materials } from "./materials.ts";

const priceList = "the project’s price list";
const shared = "shares by what each row takes of every line, counted";

/** How the price of the whole list came about. */
export function priceOfAllAccount({ lines, cost }: Materials): Account {
  return account(
    {
      formula: say`The prices of the lines that have one, added up.`,
      inputs: [
        inputs(
          "Lines with a price",
          "count",
          lines.flatMap(({ price }) => (price === null ? [] : [price])),
        ),
        remark("Lines without a price, not in it", String(cost.unpriced)),
      ],
      source: priceList,
    },
    (sum) => Number(sum),
  );
}

/** How the mass of the whole list came about, kg. */
export function massOfAllAccount({ lines }: Materials): Account {
  return account(
    {
      formula: say`The masses of the lines that have a known one, added up.`,
      inputs: [
        inputs(
          "Lines with a known mass",
          "mass",
          lines.flatMap(({ mass_kg }) => (mass_kg === null ? [] : [mass_kg])),
        ),
      ],
      source: "the project’s price list, else density of steel, 7850 kg/m³, and bags by what they give",
    },
    (sum_kg) => Number(sum_kg),
  );
}

/** How the price of some rows came about: of one row, or of a block; rows by their places in the plan. */
export function priceOfRowsAccount(materials: Materials, rows: readonly number[]): Account {
  return account(
    {
      formula: say`Of every line with a price the share that ${rows.length === 1 ? "this row takes" : "these rows take"}, spare and leftovers included.`,
      inputs: [
        inputs(
          "Shares of the lines",
          "count",
          sharesOf(materials, rows, ({ price }) => price),
        ),
      ],
      source: shared,
    },
    (sum) => Number(sum),
  );
}

/** How the mass that belongs to some rows came about, kg. */
export function massOfRowsAccount(materials: Materials, rows: readonly number[]): Account {
  return account(
    {
      formula: say`Of every line with a known mass the share that ${rows.length === 1 ? "this row takes" : "these rows take"}.`,
      inputs: [
        inputs(
          "Shares of the lines",
          "mass",
          sharesOf(materials, rows, ({ mass_kg }) => mass_kg),
        ),
      ],
      source: shared,
    },
    (sum_kg) => Number(sum_kg),
  );
}

/** How the price of one vine came about. */
export function pricePerVineAccount({ cost }: Materials, rows: Rows): Account {
  return account(
    {
      formula: say`What is priced over the vines in the rows, spares not counted as vines.`,
      inputs: [input("Price", "count", cost.price), input("Vines", "count", rows.vines.station_m.length)],
      source: "counted",
    },
    (price, vines) => Number(price) / Number(vines),
  );
}

/** How the price of so many square metres of planted ground came about: an acre, a hectare. */
export function pricePerAreaAccount({ cost }: Materials, rows: Rows, area_m2: number): Account {
  return account(
    {
      formula: say`What is priced over the planted area, times the area asked for. Planted area is row length times row spacing.`,
      inputs: [
        input("Price", "count", cost.price),
        inputs(
          "Planted area",
          "area",
          rows.blocks.map(({ plantedArea_m2 }) => plantedArea_m2),
        ),
        input("Area asked for", "area", area_m2),
      ],
      source: "geometry",
    },
    (price, planted_m2, asked_m2) => (Number(price) / Number(planted_m2)) * Number(asked_m2),
  );
}

function sharesOf(
  { lines, rowNeeds }: Materials,
  rows: readonly number[],
  of: (line: MaterialLine) => number | null,
): readonly number[] {
  return lines.flatMap((line, i) => {
    const whole = of(line);
    const needs = rowNeeds[i] ?? [];
    const own = rows.reduce((sum, row) => sum + Number(needs[row] ?? 0), 0);
    if (whole === null || own <= 0) return [];
    return [(whole * own) / needs.reduce((sum, need) => sum + need, 0)];
  });
}

import type { Outcome } from "../outcome.ts";
import type { Plan } from "../plan.ts";
import type { Json, PriceEntry } from "../project/project.ts";
import { listCsv } from "./csv.ts";
import { offeredPackages, pricesList } from "./lists/prices-list.ts";
import { readPriceJson } from "./price-list-json.ts";
import { readPriceTable } from "./price-list-table.ts";

/** The price list as a table to be filled in (RFC 4180, CRLF). */
export function priceListCsv(plan: Plan): string {
  return listCsv(pricesList(plan));
}

/** The same list as JSON: `{ "currency", "prices": [...] }`, sizes in metres or pieces, masses in kilograms; a price of null is not priced. */
export function priceListJson(plan: Plan): string {
  const { currency } = plan.project.materials;
  return `${JSON.stringify({ currency, prices: offeredPackages(plan) }, null, 2)}\n`;
}

/**
 * A price list from a file of either kind: JSON as `priceListJson` writes it or as it stands in a project, or a table with a line of heads, in
 * any order of columns, with commas, semicolons or tabs between them. Findings: exchange/price-list-unreadable,
 * exchange/price-list-line-wrong, exchange/price-list-twice.
 */
export function readPriceList(written: string): Outcome<readonly PriceEntry[]> {
  const plain = written.replace(/^\uFEFF/, "");
  return /^\s*[[{]/.test(plain) ? readPriceJson(plain) : readPriceTable(plain);
}

/** A price list as it is written into a project, for the setting "materials.prices". */
export function pricesSetting(entries: readonly PriceEntry[]): Json {
  return entries.map(({ article, size, price, mass_kg, note }) => ({
    article,
    size,
    ...(price === null ? {} : { price }),
    ...(mass_kg === null ? {} : { mass: mass_kg }),
    ...(note === null ? {} : { note }),
  }));
}

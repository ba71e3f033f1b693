import { usualSizes } from "../materials/sizes.ts";
import type { Outcome } from "../outcome.ts";
import type { Plan } from "../plan.ts";
import type { Json, PriceEntry } from "../project/project.ts";
import { inUnit, parseQuantity, text } from "../units.ts";
import { csv } from "./csv.ts";
import { readPriceJson } from "./price-list-json.ts";
import { readPriceTable } from "./price-list-table.ts";

/** One package of an article, to be priced. */
interface OfferedPackage extends PriceEntry {
  /** What the plan calls the article; empty for one that it does not need. */
  readonly item: string;
  readonly spec: string;
  readonly unit: "m" | "pieces" | "";
}

/**
 * The price list as a table to be filled in (RFC 4180, CRLF): a line for every package size of everything the plan needs, then the person's
 * prices for what it does not need. An empty price is not priced. Sizes of wire and hose are in feet in a project of US units, where that
 * says the size exactly, else in metres; mass in kilograms, where the person states it.
 */
export function priceListCsv(plan: Plan): string {
  const lines = offered(plan).map((each) => {
    const feet = each.unit === "m" && plan.project.units === "us" ? exactFeet(each.size) : null;
    return [
      each.article,
      each.item,
      each.spec,
      feet ?? each.size,
      feet === null ? each.unit : "ft",
      each.price,
      each.mass_kg,
      each.note,
    ];
  });
  return csv([["article", "item", "spec", "size", "unit", "price", "mass_kg", "note"], ...lines]);
}

/** The same list as JSON: `{ "currency", "prices": [...] }`, sizes in metres or pieces, masses in kilograms; a price of null is not priced. */
export function priceListJson(plan: Plan): string {
  const { currency } = plan.project.materials;
  return `${JSON.stringify({ currency, prices: offered(plan) }, null, 2)}\n`;
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

function offered({ materials, project }: Plan): readonly OfferedPackage[] {
  const { prices } = project.materials;
  const lines = materials?.lines ?? [];
  const needed = lines.flatMap(({ article, item, spec, unit, kind, packs }) => {
    const told = { item, spec: text(spec, project.units), unit };
    const own = prices.filter((entry) => entry.article === article);
    if (own.length > 0) return own.map((entry) => ({ ...told, ...entry }));
    return usualSizes(kind, project.materials).map((size) => {
      const pack = packs.find((each) => each.size === size);
      return { ...told, article, size, price: pack?.price ?? null, mass_kg: null, note: null };
    });
  });
  const others = prices
    .filter(({ article }) => !lines.some((line) => line.article === article))
    .map((entry) => ({ item: "", spec: "", unit: "" as const, ...entry }));
  return [...needed, ...others].map(({ article, item, spec, size, unit, price, mass_kg, note }) => ({
    article,
    item,
    spec,
    size,
    unit,
    price,
    mass_kg,
    note,
  }));
}

/** A length in feet, when reading it back gives the same length; null else. */
function exactFeet(length_m: number): number | null {
  const feet = Number(inUnit("length", length_m, "ft").toFixed(3));
  const back = parseQuantity("length", `${feet} ft`);
  return back.ok && back.value === length_m ? feet : null;
}

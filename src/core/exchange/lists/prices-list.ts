import { usualSizes } from "../../materials/sizes.ts";
import type { Plan } from "../../plan.ts";
import type { PriceEntry } from "../../project/project.ts";
import { inUnit, parseQuantity, text } from "../../units.ts";
import type { List } from "./list.ts";

/** One package of an article, to be priced. */
interface OfferedPackage extends PriceEntry {
  /** What the plan calls the article; empty for one that it does not need. */
  readonly item: string;
  readonly spec: string;
  readonly unit: "m" | "pieces" | "";
}

/**
 * The price list as a table to be filled in: a line for every package size of everything the plan needs, then the person's
 * prices for what it does not need. An empty price is not priced. Sizes of wire and hose are in feet in a project of US units, where that
 * says the size exactly, else in metres; mass in kilograms, where the person states it.
 */
export function pricesList(plan: Plan): List {
  const lines = offeredPackages(plan).map((each) => {
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
  return { kind: "prices", heads: ["article", "item", "spec", "size", "unit", "price", "mass_kg", "note"], lines };
}

/** Every package to be priced: of what the plan needs, then of what only the person has prices for. */
export function offeredPackages({ materials, project }: Plan): readonly OfferedPackage[] {
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

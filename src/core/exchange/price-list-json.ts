import type { Outcome } from "../outcome.ts";
import { failure } from "../outcome.ts";
import type { PriceEntry } from "../project/project.ts";
import { priceListUnreadable } from "./findings.ts";
import { priceEntries } from "./price-entries.ts";

/** A price list from JSON: a list of entries, or an object with one as `prices`; `mass_kg` and `mass` are the same, null is nothing said. */
export function readPriceJson(written: string): Outcome<readonly PriceEntry[]> {
  let read: unknown;
  try {
    read = JSON.parse(written);
  } catch {
    return failure([priceListUnreadable("it is no whole JSON")]);
  }
  const list = isObject(read) ? read.prices : read;
  if (!Array.isArray(list)) return failure([priceListUnreadable('it has no list named "prices"')]);
  const entries: readonly unknown[] = list;
  return priceEntries(entries.map((entry, i) => ({ place: `entry ${i + 1}`, stated: withoutNulls(entry) })));
}

function withoutNulls(entry: unknown): unknown {
  if (!isObject(entry)) return entry;
  const { article, size, price, mass = entry.mass_kg, note } = entry;
  return Object.fromEntries(
    Object.entries({ article, size, price, mass, note }).filter(([, value]) => value !== null && value !== undefined),
  );
}

function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

import { type Finding, hasError } from "../finding.ts";
import { failure, type Outcome, success } from "../outcome.ts";
import { readPriceEntry } from "../project/price-entry.ts";
import type { PriceEntry } from "../project/project.ts";

import { priceListLinesWrong, priceListTwice } from "./findings.ts";

/** One entry as it was read: where it stands, and what it says or what is wrong with it. */
export type ReadEntry =
  | { readonly place: string; readonly stated: unknown }
  | { readonly place: string; readonly wrong: string };

/**
 * The entries of a price list, held against what a project takes. All or nothing: one entry that is wrong refuses the list, and what is
 * wrong is told once with every place it is wrong at. Of two lines for one package the last holds, where the first stood.
 */
export function priceEntries(read: readonly ReadEntry[]): Outcome<readonly PriceEntry[]> {
  const wrong = new Map<string, string[]>();
  const entries = new Map<string, PriceEntry>();
  const twice = new Set<string>();
  for (const each of read) {
    const entry = "wrong" in each ? each.wrong : readPriceEntry(each.stated);
    if (typeof entry === "string") {
      wrong.set(entry, [...(wrong.get(entry) ?? []), each.place]);
      continue;
    }
    const key = JSON.stringify([entry.article, entry.size]);
    if (entries.has(key)) twice.add(entry.article);
    entries.set(key, entry);
  }
  const findings: readonly Finding[] = [
    ...[...wrong].map(([what, places]) => priceListLinesWrong(places, what)),
    ...(twice.size > 0 ? [priceListTwice([...twice])] : []),
  ];
  return hasError(findings) ? failure(findings) : success([...entries.values()], findings);
}

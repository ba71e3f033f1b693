import type { Finding } from "../../core/finding.ts";
import { failureOfReading } from "../failure-of-reading.ts";
import type { Store } from "../store.ts";
import { changeSetting } from "./change-setting.ts";

/** How many packages were taken, and what there is to say; null when the list was refused and the prices are as they were. */
export interface TakenPrices {
  readonly prices: number | null;
  readonly findings: readonly Finding[];
}

/** Takes a price list of the person's own from a file, in place of the one in the project, as one step. */
export async function takePriceList(store: Store, file: Blob & { readonly name: string }): Promise<TakenPrices> {
  let listed: string;
  try {
    listed = await file.text();
  } catch {
    return { prices: null, findings: [failureOfReading("the browser was not allowed to read it")] };
  }
  const { pricesSetting, readPriceList } = await import("../../core/exchange/price-list.ts");
  const read = readPriceList(listed);
  if (!read.ok) return { prices: null, findings: read.findings };
  const refused = changeSetting(store, "materials.prices", pricesSetting(read.value), {
    name: `Price list from ${file.name}`,
  });
  return refused.length > 0
    ? { prices: null, findings: refused }
    : { prices: read.value.length, findings: read.findings };
}

import * as z from "zod/mini";
import type { PriceEntry } from "./project.ts";
import { priceEntry } from "./schema.ts";

/** One entry of a price list, held against what a project takes; or half a sentence that says what is wrong with it. */
export function readPriceEntry(stated: unknown): PriceEntry | string {
  const parsed = z.safeParse(priceEntry, stated);
  if (!parsed.success) {
    const [issue] = parsed.error.issues;
    const member = issue?.path.join(".") ?? "";
    return `${member === "" ? "the entry" : `its ${member}`} was not understood, ${issue?.message ?? "it is wrong"}`;
  }
  const { article, size, price, mass, note } = parsed.data;
  if (article.trim() === "") return "it names no article";
  if (size <= 0) return "its size must be more than 0";
  return { article, size, price: price ?? null, mass_kg: mass ?? null, note: note ?? null };
}

import type { Json, JsonObject } from "../../core/project/project.ts";
import type { Store } from "../store.ts";

/** The entries of the stock or of the price list as the file states them, units and all; none when it states none. */
export function entriesAsWritten(store: Store, list: "onHand" | "prices"): readonly JsonObject[] {
  const settings = store.project.value?.document.tautrow;
  const materials = settings?.materials;
  const stated = isObject(materials) ? materials[list] : undefined;
  const entries: readonly Json[] = Array.isArray(stated) ? stated : [];
  return entries.filter(isObject);
}

export function isOfArticle(entry: JsonObject, article: string): boolean {
  return entry.article === article;
}

function isObject(value: Json | undefined): value is JsonObject {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

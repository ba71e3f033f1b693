import { isJsonObject, member } from "../../core/project/json-value.ts";
import type { Json, JsonObject } from "../../core/project/project.ts";
import type { Store } from "../store.ts";

/**
 * The entries of a list of settings ("water.tests") as the file states them, units and all; those in force when it states none, so that the others
 * stay as they are when one is changed.
 */
export function listAsWritten(store: Store, path: string, inForce: readonly JsonObject[]): readonly JsonObject[] {
  const stated = statedAt(store, path);
  return Array.isArray(stated) && stated.every(isJsonObject) ? stated.filter(isJsonObject) : inForce;
}

/** What the file states at a path of two names; undefined when nothing. */
export function statedAt(store: Store, path: string): Json | undefined {
  const [section = "", name = ""] = path.split(".");
  const settings = store.project.peek()?.document.tautrow;
  const own = settings ? member(settings, section) : undefined;
  return isJsonObject(own) ? member(own, name) : undefined;
}

/** The entries with one of them in another place. */
export function moved<T>(entries: readonly T[], from: number, to: number): readonly T[] {
  const entry = entries[from];
  if (entry === undefined || to < 0 || to >= entries.length) return entries;
  const others = entries.filter((_, i) => i !== from);
  return [...others.slice(0, to), entry, ...others.slice(to)];
}

/** An entry with a member set, or without it when the value is null. */
export function withEntryMember(entry: JsonObject, name: string, value: Json): JsonObject {
  const { [name]: _, ...others } = entry;
  return value === null ? others : { ...entry, [name]: value };
}

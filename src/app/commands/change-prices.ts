import type { Finding } from "../../core/finding.ts";
import type { Json, JsonObject } from "../../core/project/project.ts";
import type { Store } from "../store.ts";
import { changeSetting } from "./change-setting.ts";
import type { StepName } from "./edit.ts";
import { entriesAsWritten, isOfArticle } from "./material-entries.ts";

export type PriceMember = "size" | "price" | "mass" | "note";

/**
 * Writes one member of one package of an article; null takes it out, so that a price is "not priced" again. `sizes` are the packages that
 * hold now, in metres or pieces: where the price list does not name them yet, it does from here on, or the others would go unseen.
 */
export function changePackage(
  store: Store,
  article: string,
  sizes: readonly number[],
  at: number,
  member: PriceMember,
  value: Json,
  step: StepName,
): readonly Finding[] {
  const changed = packagesOf(store, article, sizes).map((entry, i) =>
    i === at ? withMember(entry, member, value) : entry,
  );
  return writePackages(store, article, changed, step);
}

/** Adds a package size of an article, not priced yet. */
export function addPackage(
  store: Store,
  article: string,
  sizes: readonly number[],
  size: Json,
  step: StepName,
): readonly Finding[] {
  return writePackages(store, article, [...packagesOf(store, article, sizes), { article, size }], step);
}

/** Takes a package size out; without any the usual ones hold again. */
export function removePackage(store: Store, article: string, at: number, step: StepName): readonly Finding[] {
  const left = packagesOf(store, article, []).filter((_, i) => i !== at);
  return writePackages(store, article, left, step);
}

/** True when the price list of the project names packages of the article. */
export function hasPackages(store: Store, article: string): boolean {
  return entriesAsWritten(store, "prices").some((entry) => isOfArticle(entry, article));
}

function packagesOf(store: Store, article: string, sizes: readonly number[]): readonly JsonObject[] {
  const own = entriesAsWritten(store, "prices").filter((entry) => isOfArticle(entry, article));
  return own.length > 0 ? own : sizes.map((size) => ({ article, size }));
}

function writePackages(
  store: Store,
  article: string,
  packages: readonly JsonObject[],
  step: StepName,
): readonly Finding[] {
  const entries = entriesAsWritten(store, "prices");
  const place = entries.findIndex((entry) => isOfArticle(entry, article));
  const others = entries.filter((entry) => !isOfArticle(entry, article));
  const at = place < 0 ? others.length : place;
  const left = [...others.slice(0, at), ...packages, ...others.slice(at)];
  return changeSetting(store, "materials.prices", left.length === 0 ? null : left, step);
}

function withMember(entry: JsonObject, member: PriceMember, value: Json): JsonObject {
  if (value !== null) return { ...entry, [member]: value };
  return Object.fromEntries(Object.entries(entry).filter(([name]) => name !== member));
}

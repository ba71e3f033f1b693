import type { Finding } from "../../core/finding.ts";
import type { Json, JsonObject } from "../../core/project/project.ts";
import type { Store } from "../store.ts";
import { changeSetting } from "./change-setting.ts";
import type { StepName } from "./edit.ts";
import { entriesAsWritten, isOfArticle } from "./material-entries.ts";

/** Says how many pieces of an article are there already. */
export function changePieces(store: Store, article: string, pieces: number, step: StepName): readonly Finding[] {
  return changeStock(store, article, { pieces }, step);
}

/** Says which coils of an article are there already; lengths as the file states them, in metres or text with a unit. */
export function changeCoils(store: Store, article: string, coils: readonly Json[], step: StepName): readonly Finding[] {
  return changeStock(store, article, { coils }, step);
}

/** The coils of an article as the file states them, else as they are in force. */
export function coilsAsWritten(store: Store, article: string): readonly Json[] {
  return entriesAsWritten(store, "onHand")
    .filter((entry) => isOfArticle(entry, article))
    .flatMap(({ coils }) => (Array.isArray(coils) ? coils : []));
}

/** An entry that says nothing is there goes; the entries of other articles stay as they are written. */
function changeStock(store: Store, article: string, told: JsonObject, step: StepName): readonly Finding[] {
  const entries = entriesAsWritten(store, "onHand");
  const others = entries.filter((entry) => !isOfArticle(entry, article));
  const own: JsonObject = { ...entries.find((entry) => isOfArticle(entry, article)), article, ...told };
  const isEmpty = (own.pieces ?? 0) === 0 && (!Array.isArray(own.coils) || own.coils.length === 0);
  const place = entries.findIndex((entry) => isOfArticle(entry, article));
  const at = place < 0 ? others.length : place;
  const left = isEmpty ? others : [...others.slice(0, at), own, ...others.slice(at)];
  return changeSetting(store, "materials.onHand", left.length === 0 ? null : left, step);
}

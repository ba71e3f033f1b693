import type { Json, JsonObject } from "./project.ts";

/** True for an object that is no array. What is asked about came out of JSON.parse, so all below it is JSON too. */
export function isJsonObject(value: unknown): value is JsonObject {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

/** An own member; what an object inherits ("constructor", "__proto__") is no member. */
export function member(object: JsonObject, name: string): Json | undefined {
  return Object.hasOwn(object, name) ? object[name] : undefined;
}

/** The same object with a member set, its place kept when it was there; also for names such as "__proto__". */
export function withMember(object: JsonObject, name: string, value: Json): JsonObject {
  const entries = Object.entries(object);
  const i = entries.findIndex(([key]) => key === name);
  if (i < 0) return Object.fromEntries([...entries, [name, value]]);
  return Object.fromEntries(entries.map((entry, k) => (k === i ? [name, value] : entry)));
}

/** The same object without a member. */
export function withoutMember(object: JsonObject, name: string): JsonObject {
  return Object.fromEntries(Object.entries(object).filter(([key]) => key !== name));
}

/** A value in a sentence: short, and on one line. */
export function shown(value: unknown): string {
  if (Array.isArray(value)) return "a list";
  if (isJsonObject(value)) return "an object";
  const text = typeof value === "string" ? `"${value.replace(/\s+/g, " ")}"` : String(value);
  return text.length > 42 ? `${text.slice(0, 40)}…` : text;
}

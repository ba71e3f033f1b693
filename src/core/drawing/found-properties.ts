import { featureSections } from "../project/feature-properties.ts";
import type { JsonObject, Project, Role } from "../project/project.ts";
import { ownHint } from "./found-hints.ts";
import { type FoundThing, saidValue } from "./found-thing.ts";
import { withProperty } from "./properties.ts";

/**
 * The properties of a found thing in a role. What a project reads as a setting ("setback", "width", "row") is believed only where the
 * thing states that very role itself, and only what is understood; the names of what is left out stand beside. All else is kept.
 */
export function foundProperties(
  thing: FoundThing,
  role: Role,
  { blocks }: Project,
): { readonly properties: JsonObject; readonly leftOut: readonly string[] } {
  const isOurs = saidValue(thing, "role") === role;
  const settings = featureSections[role].members;
  const leftOut: string[] = [];
  const name = thing.name?.trim() ?? "";
  const own: JsonObject = name === "" ? { role } : { role, name };
  const kept = thing.values.flatMap(([key, value]): (readonly [string, JsonObject[string]])[] => {
    if (key === "role" || key === "name") {
      if (value !== own[key] && !(key === "role" && ownHint(thing) !== null)) leftOut.push(key);
      return [];
    }
    if (typeof value === "number" && !Number.isFinite(value)) return [];
    if (!settings.includes(key)) return [[key, value]];
    const isKnownBlock = key !== "block" || blocks.some(({ id }) => id === String(value));
    if (isOurs && isKnownBlock && withProperty({}, role, key, value, key).ok) return [[key, value]];
    // The height of a spot height is read by its own rules.
    if (role !== "elevation") leftOut.push(key);
    return [];
  });
  return { properties: { ...own, ...Object.fromEntries(kept) }, leftOut };
}

import { failure, type Outcome, success } from "../outcome.ts";
import { badSetting } from "./findings.ts";
import { isJsonObject, member, shown, withMember, withoutMember } from "./json-value.ts";
import type { Json, JsonObject } from "./project.ts";
import { readSection } from "./read-section.ts";
import { type SettingPlace, sectionOf, settingPlace } from "./setting-path.ts";

/** Settings that take one of several forms: going into one replaces the other. */
const choices: ReadonlySet<string> = new Set(["bearing", "rowOne", "minRow"]);

/**
 * The settings with one of them set, or taken out when the value is null. A row, trellis or drip setting of the project is also taken out
 * of every block, so that it holds for all. Findings: `project/bad-setting`, `project/setting-out-of-range`; then nothing is set.
 */
export function setSetting(settings: JsonObject, path: string, value: Json): Outcome<JsonObject> {
  const found = settingPlace(settings, path);
  if (!found.ok) {
    const meant = found.nearest === null ? "" : `; did you mean ${found.nearest}`;
    return failure([badSetting(path, shown(value), `there is no such setting${meant}`)]);
  }
  const { place } = found;
  const current = member(
    place.section === null ? ownerOf(settings, place) : sectionOf(ownerOf(settings, place), place.section),
    place.name,
  );
  const next = place.within.length === 0 ? value : within(current, place.within, value, choices.has(place.name));
  if (next === undefined) return failure([badSetting(path, shown(value), "there is no such entry to change")]);
  if (next !== null) {
    const prefix = path
      .split(".")
      .slice(0, -1 - place.within.length)
      .join(".");
    const { findings } = readSection(place.known, { [place.name]: next }, prefix, []);
    if (findings.length > 0) return failure(findings);
  }
  return success(place.block === null ? inProject(settings, place, next) : inBlock(settings, place, place.block, next));
}

function ownerOf(settings: JsonObject, { block }: SettingPlace): JsonObject {
  if (block === null) return settings;
  const blocks = member(settings, "blocks");
  const own = Array.isArray(blocks) ? blocks[block] : undefined;
  return isJsonObject(own) ? own : {};
}

function inProject(settings: JsonObject, place: SettingPlace, value: Json): JsonObject {
  const changed = inOwner(settings, place, value);
  const { section, name } = place;
  const blocks = member(changed, "blocks");
  if (section === null || !Array.isArray(blocks)) return changed;
  const inherited = blocks.map((block: Json): Json => {
    if (!isJsonObject(block) || member(sectionOf(block, section), name) === undefined) return block;
    return withMember(block, section, withoutMember(sectionOf(block, section), name));
  });
  return withMember(changed, "blocks", inherited);
}

function inBlock(settings: JsonObject, place: SettingPlace, block: number, value: Json): JsonObject {
  const stated = member(settings, "blocks");
  const blocks: readonly Json[] = Array.isArray(stated) && stated.length > 0 ? stated : [{ id: "1" }];
  const owner = blocks[block];
  const changed = inOwner(isJsonObject(owner) ? owner : {}, place, value);
  return withMember(
    settings,
    "blocks",
    blocks.map((each, i) => (i === block ? changed : each)),
  );
}

function inOwner(owner: JsonObject, { section, name }: SettingPlace, value: Json): JsonObject {
  if (section === null) return put(owner, name, value);
  return withMember(owner, section, put(sectionOf(owner, section), name, value));
}

function put(object: JsonObject, name: string, value: Json): JsonObject {
  return value === null ? withoutMember(object, name) : withMember(object, name, value);
}

/** The value with something within it changed; undefined when the way leads nowhere. */
function within(
  current: Json | undefined,
  [name, ...rest]: readonly string[],
  value: Json,
  isChoice: boolean,
): Json | undefined {
  if (name === undefined) return value;
  if (Array.isArray(current)) {
    const i = /^\d+$/.test(name) ? Number(name) : -1;
    const entries: readonly Json[] = current;
    if (entries[i] === undefined) return undefined;
    const entry = within(entries[i], rest, value, false);
    return entry === undefined ? undefined : entries.map((each, k) => (k === i ? entry : each));
  }
  // A list that the file does not state has no entries to change.
  if (/^\d+$/.test(name)) return undefined;
  const object = isJsonObject(current) && !isChoice ? current : {};
  const inner = within(member(object, name), rest, value, false);
  return inner === undefined ? undefined : put(object, name, inner);
}

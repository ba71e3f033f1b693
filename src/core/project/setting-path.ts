import { isJsonObject, member } from "./json-value.ts";
import { nearestName } from "./nearest-name.ts";
import type { JsonObject } from "./project.ts";
import {
  blockSection,
  frameSection,
  groundSection,
  mainLineSection,
  materialsSection,
  rootSection,
  rowsSection,
  trellisSection,
  trenchSection,
} from "./schema.ts";
import type { Section } from "./schema-parts.ts";
import { blockId } from "./settings.ts";
import { dripSection, seasonSection, setsSection, waterSection } from "./water-schema.ts";

/** Where a path such as "blocks.east.rows.minRow.vines" leads. */
export interface SettingPlace {
  /** Index in the list of blocks; null for a setting of the project. */
  readonly block: number | null;
  /** "rows"; null for a member of the project or the block itself, such as "name". */
  readonly section: string | null;
  readonly name: string;
  readonly known: Section<unknown>;
  /** What goes on into the value: ["vines"]. */
  readonly within: readonly string[];
}

const blockParts: Readonly<Record<string, Section<unknown>>> = {
  rows: rowsSection,
  trellis: trellisSection,
  drip: dripSection,
};
const rootParts: Readonly<Record<string, Section<unknown>>> = {
  ...blockParts,
  frame: frameSection,
  ground: groundSection,
  mainLine: mainLineSection,
  trench: trenchSection,
  water: waterSection,
  sets: setsSection,
  season: seasonSection,
  materials: materialsSection,
};

/** The place a path leads to, or the nearest path that leads to one (null when none is near). */
export function settingPlace(
  settings: JsonObject,
  path: string,
): { readonly ok: true; readonly place: SettingPlace } | { readonly ok: false; readonly nearest: string | null } {
  if (path.startsWith("blocks.")) {
    const ids = blockIds(settings);
    const rest = path.slice("blocks.".length);
    // An id may hold dots, so the longest one that fits is taken.
    const id = [...ids].sort((a, b) => b.length - a.length).find((each) => rest.startsWith(`${each}.`));
    if (id === undefined) {
      const [typed = "", ...after] = rest.split(".");
      const near = nearestName(typed, ids);
      return { ok: false, nearest: near === null ? null : ["blocks", near, ...after].join(".") };
    }
    return placeIn(rest.slice(id.length + 1), `blocks.${id}.`, ids.indexOf(id), blockSection, blockParts);
  }
  return placeIn(path, "", null, rootSection, rootParts);
}

/** Ids of the blocks in the settings; one block "1" when they name none. */
export function blockIds(settings: JsonObject): readonly string[] {
  const blocks = member(settings, "blocks");
  return Array.isArray(blocks) && blocks.length > 0 ? blocks.map(blockId) : ["1"];
}

function placeIn(
  path: string,
  prefix: string,
  block: number | null,
  own: Section<unknown>,
  sections: Readonly<Record<string, Section<unknown>>>,
): ReturnType<typeof settingPlace> {
  const [first = "", second, ...rest] = path.split(".");
  if (own.members.includes(first) && !(block !== null && first === "id")) {
    const within = second === undefined ? [] : [second, ...rest];
    return { ok: true, place: { block, section: null, name: first, known: own, within } };
  }
  const known = Object.hasOwn(sections, first) ? sections[first] : undefined;
  if (known !== undefined && second !== undefined && known.members.includes(second)) {
    return { ok: true, place: { block, section: first, name: second, known, within: rest } };
  }
  const paths = [
    ...own.members,
    ...Object.entries(sections).flatMap(([section, { members }]) => members.map((name) => `${section}.${name}`)),
  ];
  const nearest = nearestName(path, paths) ?? paths.find((each) => each.endsWith(`.${path}`)) ?? null;
  return { ok: false, nearest: nearest === null ? null : prefix + nearest };
}

/** A section of the project or of a block, empty when it is not stated. */
export function sectionOf(owner: JsonObject, section: string): JsonObject {
  const value = member(owner, section);
  return isJsonObject(value) ? value : {};
}

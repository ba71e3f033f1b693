import type { z } from "zod/mini";
import { isJsonObject, member } from "./json-value.ts";
import { nearestName } from "./nearest-name.ts";
import type { JsonObject } from "./project.ts";
import {
  blockShape,
  dripShape,
  frameShape,
  groundShape,
  materialsShape,
  rootShape,
  rowsShape,
  trellisShape,
} from "./schema.ts";
import { blockId } from "./settings.ts";

type Shape = Readonly<Record<string, z.ZodMiniType>>;

/** Where a path such as "blocks.east.rows.minRow.vines" leads. */
export interface SettingPlace {
  /** Index in the list of blocks; null for a setting of the project. */
  readonly block: number | null;
  /** "rows"; null for a member of the project or the block itself, such as "name". */
  readonly section: string | null;
  readonly name: string;
  readonly shape: Shape;
  /** What goes on into the value: ["vines"]. */
  readonly within: readonly string[];
}

const blockParts: Readonly<Record<string, Shape>> = { rows: rowsShape, trellis: trellisShape, drip: dripShape };
const rootParts: Readonly<Record<string, Shape>> = {
  ...blockParts,
  frame: frameShape,
  ground: groundShape,
  materials: materialsShape,
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
    return placeIn(rest.slice(id.length + 1), `blocks.${id}.`, ids.indexOf(id), blockShape, blockParts);
  }
  return placeIn(path, "", null, rootShape, rootParts);
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
  own: Shape,
  sections: Readonly<Record<string, Shape>>,
): ReturnType<typeof settingPlace> {
  const [first = "", second, ...rest] = path.split(".");
  if (Object.hasOwn(own, first) && !(block !== null && first === "id")) {
    const within = second === undefined ? [] : [second, ...rest];
    return { ok: true, place: { block, section: null, name: first, shape: own, within } };
  }
  const shape = Object.hasOwn(sections, first) ? sections[first] : undefined;
  if (shape !== undefined && second !== undefined && Object.hasOwn(shape, second)) {
    return { ok: true, place: { block, section: first, name: second, shape, within: rest } };
  }
  const known = [
    ...Object.keys(own),
    ...Object.entries(sections).flatMap(([section, each]) => Object.keys(each).map((name) => `${section}.${name}`)),
  ];
  const nearest = nearestName(path, known) ?? known.find((each) => each.endsWith(`.${path}`)) ?? null;
  return { ok: false, nearest: nearest === null ? null : prefix + nearest };
}

export function sectionOf(owner: JsonObject, section: string): JsonObject {
  const value = member(owner, section);
  return isJsonObject(value) ? value : {};
}

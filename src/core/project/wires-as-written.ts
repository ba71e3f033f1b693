import { isJsonObject, member } from "./json-value.ts";
import type { Json, JsonObject, Project } from "./project.ts";
import { blockIds } from "./setting-path.ts";

/** The wires of a block as its file states them, units and all, else as they are in force. Empty when there is no such block. */
export function wiresAsWritten(project: Project, blockId: string): readonly JsonObject[] {
  const block = project.blocks.find(({ id }) => id === blockId);
  if (block === undefined) return [];
  const stated = statedWires(project, blockId);
  if (stated?.length === block.trellis.wires.length) return stated;
  return block.trellis.wires.map(({ purpose, height_m, diameter_mm, count }) => ({
    purpose,
    height: height_m,
    diameter: diameter_mm,
    count,
  }));
}

/** The path of a setting of a block: the project's own when it has one block only. */
export function blockPath(project: Project, blockId: string, path: string): string {
  return project.blocks.length > 1 ? `blocks.${blockId}.${path}` : path;
}

function statedWires(project: Project, blockId: string): readonly JsonObject[] | null {
  const settings = project.document.tautrow;
  if (settings === undefined) return null;
  const blocks = member(settings, "blocks");
  const own = Array.isArray(blocks) ? blocks[blockIds(settings).indexOf(blockId)] : undefined;
  for (const owner of [own, settings]) {
    const trellis = isJsonObject(owner) ? member(owner, "trellis") : undefined;
    const wires: Json | undefined = isJsonObject(trellis) ? member(trellis, "wires") : undefined;
    if (Array.isArray(wires)) return wires.every(isJsonObject) ? wires.filter(isJsonObject) : null;
  }
  return null;
}

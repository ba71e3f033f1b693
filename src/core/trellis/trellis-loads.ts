import type { Elevation } from "../ground/elevation.ts";
import type { Block } from "../project/project.ts";
import type { Rows } from "../rows/rows.ts";
import type { TrellisLoads } from "./loads.ts";
import type { BlockTrellis, RowTrellis } from "./trellis.ts";

/** Tension, sag and loads of the structure. */
export function trellisLoads(
  _rows: Rows,
  _elevation: Elevation,
  _blocks: readonly Block[],
  _structure: { readonly blocks: readonly BlockTrellis[]; readonly rows: readonly RowTrellis[] },
): TrellisLoads {
  return { blocks: [], dips: [] };
}

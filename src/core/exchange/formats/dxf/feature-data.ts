import type { Layer, LayerFeature, Value } from "../../layers/layer.ts";
import { dxfPieces } from "./dxf-text.ts";
import { group } from "./group.ts";

/** Whose extended data it is; it stands in the table of applications. */
export const applicationName = "TAUTROW";

/**
 * What a drawing has no place for, as extended entity data (groups 1000 to 1071, DXF R12): "name", then its value by type; a text longer
 * than a group takes stands in braces, piece by piece.
 */
export function extendedData(pairs: readonly (readonly [name: string, value: Value])[]): string {
  const known = pairs.map(([name, value]) => (value === null ? "" : group(1000, name) + valueGroups(value)));
  return group(1001, applicationName) + known.join("");
}

/** Id, what it is called, and columns of a feature; columns without a value are left out. */
export function featureData({ columns }: Layer, { id, values }: LayerFeature, name: string): string {
  return extendedData([
    ["id", id],
    ["called", name],
    ...columns.map((column, i) => [column.name, values[i] ?? null] as const),
  ]);
}

function valueGroups(value: string | number | boolean): string {
  if (typeof value === "boolean") return group(1070, value ? 1 : 0);
  if (typeof value === "number") return Number.isInteger(value) ? whole(value) : group(1040, value);
  const pieces = dxfPieces(value);
  const texts = pieces.map((piece) => group(1000, piece)).join("");
  return pieces.length === 1 ? texts : group(1002, "{") + texts + group(1002, "}");
}

/** A 1071 group holds 32 bits. */
function whole(value: number): string {
  return Math.abs(value) < 2 ** 31 ? group(1071, value) : group(1040, value);
}

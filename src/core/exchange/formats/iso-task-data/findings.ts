import { type Finding, listed, say, unplaced } from "../../../finding.ts";
import type { Layer } from "../../layers/layer.ts";

/** Task data has a place for outlines, lines and their names, and for nothing else about them. */
export function columnsLeftOut(layers: readonly Layer[]): Finding {
  const columns = [...new Set(layers.flatMap((layer) => layer.columns.map(({ name }) => name)))];
  const count = layers.reduce((sum, layer) => sum + layer.count, 0);
  return unplaced(
    "exchange/columns-left-out",
    "note",
    say`Task data takes the names and places of all ${count} things, and none of their columns (${listed(columns)}).`,
    say`The standard has no place for them.`,
    say`Hand the columns over as a table or as GeoJSON beside it.`,
  );
}

import { type Finding, listed, say, unplaced } from "../../../finding.ts";

/** Columns whose names are longer than a dBASE table takes; each as "groundLength_m is grouLeng_m". */
export function columnsRenamed(changed: readonly string[]): Finding {
  return unplaced(
    "exchange/columns-renamed",
    "note",
    say`In a shapefile names of columns have at most 10 letters, so ${changed.length} are shorter: ${listed(changed, 3)}.`,
    say`The text in the archive says what each one is called in full.`,
    say`Choose GeoPackage or GeoJSON where the names have to stay as they are.`,
  );
}

/** Texts that a dBASE table has no room for. `isAll`: all were looked at, not only the first ones of each layer. */
export function textsCut(count: number, example: string, isAll: boolean): Finding {
  return unplaced(
    "exchange/texts-cut",
    "warning",
    say`${isAll ? "" : "At least "}${count} texts are longer than the 254 bytes that a shapefile holds and are cut, such as that of ${example}.`,
    say`The text in the archive has them in full.`,
    say`Choose GeoPackage or GeoJSON where they have to stay whole.`,
  );
}

/** Heights that are known at some places only. */
export function heightsPartlyKnown(layers: readonly string[], becomes: string): Finding {
  return unplaced(
    "exchange/heights-partly-known",
    "warning",
    say`Heights are known at only some of the places of ${listed(layers)}: ${becomes}.`,
    say`The format has no way to say that a single height is not known, and none is made up.`,
    say`Bring in heights that cover all of the ground, or hand over GeoJSON or CSV.`,
  );
}

import type { UnzippedFile } from "../../unzip.ts";

/** The files of one shapefile. */
export interface ShapeSet {
  /** As its .shp is called, without the ending. */
  readonly name: string;
  readonly shp: Uint8Array;
  readonly shx: Uint8Array | null;
  readonly dbf: Uint8Array | null;
  readonly prj: string | null;
  readonly cpg: string | null;
}

const most_letters = 20_000;

/** Whether a path inside an archive belongs to a shapefile. */
export function isOfShapefile(path: string): boolean {
  return /\.(shp|shx|dbf|prj|cpg)$/i.test(path);
}

/** The shapefiles in an archive: files of one path but for the ending, capitals or not. */
export function shapeSets(files: readonly UnzippedFile[]): readonly ShapeSet[] {
  const sets = new Map<string, Map<string, UnzippedFile>>();
  for (const file of files) {
    const [, stem = "", ending = ""] = /^(.*)\.([^.]+)$/s.exec(file.path.toLowerCase()) ?? [];
    const set = sets.get(stem) ?? new Map<string, UnzippedFile>();
    if (!set.has(ending)) set.set(ending, file);
    sets.set(stem, set);
  }
  return [...sets.values()].flatMap((set) => {
    const shp = set.get("shp");
    if (shp === undefined) return [];
    const textOf = (ending: string): string | null => {
      const bytes = set.get(ending)?.bytes;
      return bytes === undefined ? null : new TextDecoder().decode(bytes.subarray(0, most_letters));
    };
    return [
      {
        name: shp.name.replace(/\.shp$/i, ""),
        shp: shp.bytes,
        shx: set.get("shx")?.bytes ?? null,
        dbf: set.get("dbf")?.bytes ?? null,
        prj: textOf("prj"),
        cpg: textOf("cpg"),
      },
    ];
  });
}

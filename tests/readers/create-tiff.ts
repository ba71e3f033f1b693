import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { writeArrayBuffer } from "geotiff";

/** A file of heights that GDAL wrote; see the README beside it. */
export function fixtureFile(name: string): Blob {
  return new Blob([readFileSync(fileURLToPath(new URL(`../fixtures/heights/${name}`, import.meta.url)))]);
}

export function fixtureLines(name: string): readonly (readonly number[])[] {
  const text = readFileSync(fileURLToPath(new URL(`../fixtures/heights/${name}`, import.meta.url)), "utf8");
  return text
    .trim()
    .split("\n")
    .map((line) => line.split(",").map((cell) => (cell === "nan" ? NaN : Number(cell))));
}

export interface TiffWish {
  readonly columns?: number;
  readonly rows?: number;
  readonly height?: (column: number, row: number) => number;
  readonly tags?: Readonly<Record<string, unknown>>;
}

/** A file of heights in UTM zone 10 with cells of 2 m, its north-west corner at 561000, 4238060; open country, invented. */
export function createTiff({ columns = 30, rows = 20, height = () => 100, tags = {} }: TiffWish = {}): Blob {
  const cells = new Float32Array(columns * rows);
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) cells[row * columns + column] = height(column, row);
  }
  const written = writeArrayBuffer(cells, {
    width: columns,
    height: rows,
    GTModelTypeGeoKey: 1,
    GTRasterTypeGeoKey: 1,
    ProjectedCSTypeGeoKey: 32610,
    ModelPixelScale: [2, 2, 0],
    ModelTiepoint: [0, 0, 0, 561000, 4238060, 0],
    ...tags,
  });
  return new Blob([written]);
}

/** The same file with the number of a short tag replaced: its head says what is no longer so. */
export async function withTag(file: Blob, tag: number, value: number): Promise<Blob> {
  const view = new DataView(await file.arrayBuffer());
  const isLittle = view.getUint16(0) === 0x4949;
  const directory = view.getUint32(4, isLittle);
  const entries = view.getUint16(directory, isLittle);
  for (let i = 0; i < entries; i++) {
    const entry = directory + 2 + 12 * i;
    if (view.getUint16(entry, isLittle) !== tag) continue;
    if (view.getUint16(entry + 2, isLittle) === 3) view.setUint16(entry + 8, value, isLittle);
    else view.setUint32(entry + 8, value, isLittle);
    return new Blob([view.buffer]);
  }
  throw new Error(`the file has no tag ${tag}`);
}

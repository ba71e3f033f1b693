import GeoTIFF from "geotiff";
import { failure, type Outcome, success } from "../core/outcome.ts";
import { blobSource, type FileBytes } from "./blob-source.ts";
import { notATiff, notHeights, unreadable, withoutPlace } from "./findings.ts";

type Image = Awaited<ReturnType<GeoTIFF["getImage"]>>;

/** x = a·column + b·row + c, y = d·column + e·row + f; columns and rows counted from 0 at the middles of cells. */
export interface CellsToSystem {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly e: number;
  readonly f: number;
}

/** A GeoTIFF's heights as they stand in the file, in the numbers of its own coordinate system. */
export interface TiffRaster {
  readonly columns: number;
  readonly rows: number;
  readonly bands: number;
  readonly heightsAre: "cells" | "points";
  readonly place: CellsToSystem;
  readonly noData: number | null;
  /** Cells that are packed together: reading one reads them all. */
  readonly block: { readonly columns: number; readonly rows: number };
  /** Codes of the file's geo keys, null where it has none. */
  readonly systemCode: number | null;
  readonly isProjected: boolean;
  readonly linearUnitCode: number | null;
  readonly verticalUnitCode: number | null;
  readonly verticalSystemCode: number | null;
  /** Heights of a window of cells, row by row, NaN where there is none: as the file counts them. */
  read(window: Window, signal: AbortSignal | undefined): Promise<Float64Array>;
}

/** Cells from `west` to before `east`, and from `north` to before `south`. */
export interface Window {
  readonly west: number;
  readonly north: number;
  readonly east: number;
  readonly south: number;
}

/** Codes from here on mean "defined by the person who wrote the file". */
const userDefined = 32767;

/**
 * Opens the first image of a GeoTIFF; nothing of its cells is read yet. Findings: `readers/not-a-tiff`, `readers/unreadable`,
 * `readers/not-heights`, `readers/without-place`.
 */
export async function openTiff(blob: FileBytes, name: string): Promise<Outcome<TiffRaster>> {
  let image: Image;
  try {
    image = await (await GeoTIFF.fromSource(blobSource(blob))).getImage();
  } catch {
    return failure([notATiff(name)]);
  }
  try {
    return await rasterOf(image, name);
  } catch (problem) {
    return failure([unreadable(name, problem instanceof Error ? problem.message : String(problem))]);
  }
}

async function rasterOf(image: Image, name: string): Promise<Outcome<TiffRaster>> {
  const bands = image.getSamplesPerPixel();
  const directory = image.fileDirectory;
  const photometric = Number(directory.getValue("PhotometricInterpretation") ?? 1);
  // 0 and 1 are plain numbers; 2 and above are colours, but for files that call bands of heights so.
  if (photometric >= 2 && image.getBitsPerSample() <= 8) return failure([notHeights(name)]);
  const keys: Readonly<Record<string, unknown>> = image.getGeoKeys() ?? {};
  const code = (key: string): number | null => {
    const value = keys[key];
    return typeof value === "number" && value !== userDefined && value > 0 ? value : null;
  };
  const isPoint = code("GTRasterTypeGeoKey") === 2;
  const place = await placeOf(image, isPoint);
  if (place === null) return failure([withoutPlace(name)]);
  const isProjected = code("GTModelTypeGeoKey") === 1;
  const [scale, offset] = await scaleOf(image);
  const stated = image.getGDALNoData();
  const noData = stated === null || Number.isNaN(stated) ? null : stated;
  const isSingle = image.getSampleFormat() === 3 && image.getBitsPerSample() === 32;
  const missing = noData !== null && isSingle ? Math.fround(noData) : noData;
  return success({
    columns: image.getWidth(),
    rows: image.getHeight(),
    bands,
    heightsAre: isPoint ? "points" : "cells",
    place,
    noData,
    block: { columns: image.getTileWidth(), rows: image.getTileHeight() },
    systemCode: isProjected ? code("ProjectedCSTypeGeoKey") : code("GeographicTypeGeoKey"),
    isProjected,
    linearUnitCode: code("ProjLinearUnitsGeoKey"),
    verticalUnitCode: code("VerticalUnitsGeoKey"),
    verticalSystemCode: code("VerticalCSTypeGeoKey") ?? code("VerticalGeoKey"),
    read: async ({ west, north, east, south }, signal) => {
      const cells = await image.readRasters({
        window: [west, north, east, south],
        samples: [0],
        interleave: true,
        ...(signal === undefined ? {} : { signal }),
      });
      const heights = new Float64Array(cells.length);
      for (let i = 0; i < heights.length; i++) {
        const value = Number(cells[i]);
        heights[i] = value === missing || !Number.isFinite(value) ? NaN : value * scale + offset;
      }
      return heights;
    },
  });
}

/**
 * The tags that place the cells, moved from the corners of cells to their middles: GeoTIFF 1.1 (OGC 19-008), "PixelIsArea" counts from
 * the north-west corner of the first cell, "PixelIsPoint" from its middle. null without them, or when the file is only pinned at places.
 */
async function placeOf(image: Image, isPoint: boolean): Promise<CellsToSystem | null> {
  const directory = image.fileDirectory;
  const shift = isPoint ? 0 : 0.5;
  const middles = (a: number, b: number, c: number, d: number, e: number, f: number): CellsToSystem | null => {
    const isSound = Math.abs(a * e - b * d) > 0 && [a, b, c, d, e, f].every(Number.isFinite);
    return isSound ? { a, b, c: c + shift * (a + b), d, e, f: f + shift * (d + e) } : null;
  };
  const matrix = numbers(await directory.loadValue("ModelTransformation"));
  if (matrix.length === 16) {
    const [a = 0, b = 0, , c = 0, d = 0, e = 0, , f = 0] = matrix;
    return middles(a, b, c, d, e, f);
  }
  const scale = numbers(await directory.loadValue("ModelPixelScale"));
  const [i = 0, j = 0, , x, y] = numbers(await directory.loadValue("ModelTiepoint"));
  const [scaleX, scaleY] = scale;
  if (scaleX === undefined || scaleY === undefined || x === undefined || y === undefined) return null;
  return middles(scaleX, 0, x - i * scaleX, 0, -scaleY, y + j * scaleY);
}

/** What stored numbers are multiplied by and what is added, when the file says so (whole decimetres, for example). */
async function scaleOf(image: Image): Promise<readonly [scale: number, offset: number]> {
  const said = (await image.getGDALMetadata(0)) ?? {};
  const number = (name: string, usual: number): number => {
    const value = Number(said[name] ?? usual);
    return Number.isFinite(value) ? value : usual;
  };
  return [number("SCALE", 1) || 1, number("OFFSET", 0)];
}

function numbers(value: unknown): readonly number[] {
  if (Array.isArray(value)) return value.map(Number);
  return ArrayBuffer.isView(value) && !(value instanceof DataView) ? Array.from(Object.values(value), Number) : [];
}

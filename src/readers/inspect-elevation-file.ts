import type { Finding } from "../core/finding.ts";
import { failure, type Outcome, success } from "../core/outcome.ts";
import { type CoordinateSystem, statedSystem, systemOfCode } from "../core/systems/coordinate-system.ts";
import { unknownSystem } from "../core/systems/findings.ts";
import type { FileBytes } from "./blob-source.ts";
import type { ElevationFile } from "./elevation-file.ts";
import { firstBandOf, unitsDisagree } from "./findings.ts";
import type { LonLatBox } from "./lon-lat-box.ts";
import { openTiff, type TiffRaster } from "./tiff-raster.ts";
import { unitOfCode, unitOfVerticalSystem, type VerticalUnit } from "./vertical-unit.ts";

/** A file of heights, opened, with its coordinate system when it is known. */
export interface OpenedElevation {
  readonly raster: TiffRaster;
  readonly system: CoordinateSystem | null;
  readonly verticalUnit: VerticalUnit | null;
}

/**
 * What a GeoTIFF of heights says of itself, to be shown before it is read; only its head is read. Where its coordinate system is not known
 * the answer has none, and a finding of severity error says so: the person may state one (`stated`, a proj4 text or "EPSG:26910").
 * Findings: those of `openElevation`.
 */
export async function inspectElevationFile(
  blob: FileBytes,
  name: string,
  stated?: string,
): Promise<Outcome<ElevationFile>> {
  const opened = await openElevation(blob, name, stated);
  if (!opened.ok) return opened;
  const { raster, system, verticalUnit } = opened.value;
  return success(
    {
      columns: raster.columns,
      rows: raster.rows,
      system: system?.name ?? null,
      cell_m: system === null ? null : cellOf(raster, system),
      box: system === null ? null : boxOf(raster, system),
      heightsAre: raster.heightsAre,
      noData: raster.noData,
      verticalUnit,
    },
    opened.findings,
  );
}

/**
 * Opens a GeoTIFF and finds out its coordinate system: the stated one, else its own. Findings: those of `openTiff`, `systems/unknown-system`, `systems/grid-system`
 * (the system is null then), `systems/bad-system`, `readers/units-disagree`, `readers/several-bands`.
 */
export async function openElevation(
  blob: FileBytes,
  name: string,
  stated: string | undefined,
): Promise<Outcome<OpenedElevation>> {
  const tiff = await openTiff(blob, name);
  if (!tiff.ok) return tiff;
  const raster = tiff.value;
  const findings: Finding[] = [...tiff.findings];
  if (raster.bands > 1) findings.push(firstBandOf(raster.bands));
  const verticalUnit = unitOfCode(raster.verticalUnitCode) ?? unitOfVerticalSystem(raster.verticalSystemCode);
  if (stated !== undefined && stated.trim() !== "") {
    const system = statedSystem(stated);
    return system.ok ? success({ raster, system: system.value, verticalUnit }, findings) : failure(system.findings);
  }
  const own = raster.systemCode === null ? null : systemOfCode(raster.systemCode);
  if (own === null || !own.ok) {
    return success({ raster, system: null, verticalUnit }, [...findings, ...(own?.findings ?? [unknownSystem(null)])]);
  }
  if (raster.isProjected && disagrees(raster.linearUnitCode, own.value.definition)) {
    return success({ raster, system: null, verticalUnit }, [...findings, unitsDisagree(own.value.name)]);
  }
  return success({ raster, system: own.value, verticalUnit }, findings);
}

/** The file names a unit of length that its coordinate system does not have. */
function disagrees(code: number | null, definition: string): boolean {
  if (code === null) return false;
  const written = /\+units=(\S+)/.exec(definition)?.[1];
  return unitOfCode(code) !== written;
}

const radians = Math.PI / 180;

/** Metres from one cell to the next in the middle of the file, about. */
export function cellOf(raster: TiffRaster, system: CoordinateSystem): readonly [east: number, north: number] {
  const { a, b, c, d, e, f } = raster.place;
  const [column, row] = [raster.columns / 2, raster.rows / 2];
  const place = (i: number, j: number) => system.toLonLat(a * i + b * j + c, d * i + e * j + f);
  const apart = (one: readonly [number, number], other: readonly [number, number]): number => {
    const north_m = (one[1] - other[1]) * degree_m;
    return Math.hypot((one[0] - other[0]) * degree_m * Math.cos(one[1] * radians), north_m);
  };
  const here = place(column, row);
  return [apart(here, place(column + 1, row)), apart(here, place(column, row + 1))];
}

/** A degree of latitude, about. */
const degree_m = 111_320;

/** The box around the cells, by places along their border. */
export function boxOf(raster: TiffRaster, system: CoordinateSystem): LonLatBox {
  const { a, b, c, d, e, f } = raster.place;
  const steps = 16;
  let box: LonLatBox = { west: Infinity, south: Infinity, east: -Infinity, north: -Infinity };
  for (let i = 0; i <= steps; i++) {
    const [column, row] = [((raster.columns - 1) * i) / steps, ((raster.rows - 1) * i) / steps];
    for (const [x, y] of [
      [column, 0],
      [column, raster.rows - 1],
      [0, row],
      [raster.columns - 1, row],
    ] as const) {
      const [lon, lat] = system.toLonLat(a * x + b * y + c, d * x + e * y + f);
      box = {
        west: Math.min(box.west, lon),
        south: Math.min(box.south, lat),
        east: Math.max(box.east, lon),
        north: Math.max(box.north, lat),
      };
    }
  }
  return box;
}

import type { Finding } from "../finding.ts";
import { type Elevation, type HeightAt, heightReader } from "../ground/elevation.ts";
import type { Block, GroundSettings, RowSettings } from "../project/project.ts";
import type { NumberedRows } from "./block-rows.ts";
import { heightsMissing, steepAcross, steepAlong } from "./findings.ts";
import { groundLength_m } from "./ground-length.ts";
import { linePostStations } from "./line-posts.ts";
import type { RowDraft } from "./row-draft.ts";
import { noSlopes, type RowSlopes, rowSlopes } from "./row-slopes.ts";
import type { BlockRows, Positions, Row, Rows } from "./rows.ts";
import { vineStations } from "./vines.ts";

/**
 * The rows of all blocks with their vines, line posts and stakes, their lengths along the ground and its slopes; those that lie partly where
 * no height is known keep their level length. Ids carry the block when there are several. Findings: `rows/heights-missing`, and where the
 * ground is steeper than the machine may work on, `rows/steep-along` and `rows/steep-across`, one a block.
 */
export function layRows(
  blocks: readonly Block[],
  numbered: readonly NumberedRows[],
  elevation: Elevation,
  limits: Pick<GroundSettings, "steepestAlong_ratio" | "steepestAcross_ratio">,
): { readonly rows: Rows; readonly findings: readonly Finding[] } {
  const heightAt = elevation.kind === "flat" ? null : heightReader(elevation);
  const findings: Finding[] = [];
  const rows: Row[] = [];
  const vines: (readonly number[])[] = [];
  const linePosts: (readonly number[])[] = [];
  const stakes: (readonly number[])[] = [];
  const results: BlockRows[] = [];
  blocks.forEach((block, i) => {
    const result = numbered[i];
    if (result === undefined) return;
    const settings = block.rows;
    const first = rows.length;
    let length_m = 0;
    const unknown: string[] = [];
    for (const { row, number, label } of result.rows) {
      const vineAt = vineStations(
        row.layout.firstVine_m - row.layout.from_m,
        row.layout.vines,
        settings.vineSpacing_m,
        row.gaps,
      );
      const postAt = linePostStations(row.layout, block.rows, row.gaps);
      const stakeAt = repeated(vineAt, block.trellis.stakesPerVine);
      vines.push(vineAt);
      linePosts.push(postAt);
      stakes.push(stakeAt);
      length_m += row.length_m;
      const id = blocks.length > 1 ? `${block.id}-${label}` : label;
      const ground_m = alongGround_m(row, heightAt, settings);
      if (ground_m === null) unknown.push(id);
      const { fall_deg, ...slopes } = slopesOf(row, heightAt, settings);
      rows.push({
        id,
        block: block.id,
        number,
        start: row.start,
        end: row.end,
        length_m: row.length_m,
        groundLength_m: ground_m ?? row.length_m,
        ...slopes,
        aspect_deg: fall_deg === null ? null : trueBearing(fall_deg, result),
        startLeftover_m: row.startLeftover_m,
        endLeftover_m: row.endLeftover_m,
        startCut: row.startCut,
        endCut: row.endCut,
        given: row.given,
        vines: vineAt.length,
        linePosts: postAt.length,
        stakes: stakeAt.length,
      });
    }
    results.push({
      block: block.id,
      bearing_deg: result.bearing_deg,
      gridBearing_deg: result.gridBearing_deg,
      rowSpacing_m: settings.rowSpacing_m,
      first,
      count: rows.length - first,
      length_m,
      shortPieces: result.shortPieces,
      shortLength_m: result.shortLength_m,
      plantedArea_m2: length_m * settings.rowSpacing_m,
    });
    if (unknown.length > 0) findings.push(heightsMissing(block.name, unknown));
    const own = rows.slice(first);
    const [along, across] = [
      steepest(own, ({ slopeAlong_ratio }) => slopeAlong_ratio, limits.steepestAlong_ratio),
      steepest(own, ({ slopeAcross_ratio }) => slopeAcross_ratio, limits.steepestAcross_ratio),
    ];
    if (along !== null)
      findings.push(steepAlong(block.name, along.rows, along.slope_ratio, limits.steepestAlong_ratio));
    if (across !== null) {
      findings.push(steepAcross(block.name, across.rows, across.slope_ratio, limits.steepestAcross_ratio));
    }
  });
  return {
    rows: {
      rows,
      blocks: results,
      vines: positionsOf(vines, rows),
      linePosts: positionsOf(linePosts, rows),
      stakes: positionsOf(stakes, rows),
    },
    findings,
  };
}

function slopesOf({ start, end }: RowDraft, heightAt: HeightAt | null, settings: RowSettings): RowSlopes {
  if (heightAt === null) return noSlopes;
  const length_m = Math.hypot(end[0] - start[0], end[1] - start[1]);
  return rowSlopes(heightAt, start, end, length_m, settings.bay_vines * settings.vineSpacing_m);
}

/** Rows with a place that is steeper than the limit, and how steep the steepest is; null when there is none. */
function steepest(rows: readonly Row[], slope: (row: Row) => number | null, limit_ratio: number) {
  const steep = rows.filter((row) => Math.abs(slope(row) ?? 0) > limit_ratio + rounding_ratio);
  if (steep.length === 0) return null;
  const slope_ratio = steep.reduce((most, row) => Math.max(most, Math.abs(slope(row) ?? 0)), 0);
  return { rows: steep.map(({ id }) => id), slope_ratio };
}

/** A plane of just the limit is not above it. */
const rounding_ratio = 1e-6;

/** A bearing of the grid as a true one. The block's own two bearings are those of lines: their difference may be half a turn too much. */
function trueBearing(grid_deg: number, { bearing_deg, gridBearing_deg }: NumberedRows): number {
  const convergence_deg = ((bearing_deg - gridBearing_deg + 270) % 180) - 90;
  return (grid_deg + convergence_deg + 360) % 360;
}

/** A tape lies on the ground, so a taped length is one along it. */
function alongGround_m(row: RowDraft, heightAt: HeightAt | null, settings: RowSettings): number | null {
  const { start, end, length_m } = row;
  const isTaped = Math.abs(Math.hypot(end[0] - start[0], end[1] - start[1]) - length_m) > tapedDifference_m;
  if (isTaped || heightAt === null) return length_m;
  return groundLength_m(heightAt, start, end, length_m, settings.bay_vines * settings.vineSpacing_m);
}

const tapedDifference_m = 1e-6;

function repeated(stations: readonly number[], times: number): readonly number[] {
  return times === 1 ? stations : stations.flatMap((at) => Array<number>(times).fill(at));
}

/** Stations of every row laid along it from its start. */
function positionsOf(stations: readonly (readonly number[])[], rows: readonly Row[]): Positions {
  const count = stations.reduce((sum, ofRow) => sum + ofRow.length, 0);
  const offsets = new Uint32Array(stations.length + 1);
  const station_m = new Float64Array(count);
  const xy = new Float64Array(2 * count);
  let n = 0;
  rows.forEach(({ start, end, length_m }, i) => {
    const dx = (end[0] - start[0]) / length_m;
    const dy = (end[1] - start[1]) / length_m;
    for (const station of stations[i] ?? []) {
      station_m[n] = station;
      xy[2 * n] = start[0] + station * dx;
      xy[2 * n + 1] = start[1] + station * dy;
      n++;
    }
    offsets[i + 1] = n;
  });
  return { offsets, station_m, xy };
}

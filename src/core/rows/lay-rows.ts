import type { Finding } from "../finding.ts";
import { type Elevation, type HeightAt, heightReader } from "../ground/elevation.ts";
import type { Block, RowSettings } from "../project/project.ts";
import type { NumberedRows } from "./block-rows.ts";
import { heightsMissing } from "./findings.ts";
import { groundLength_m } from "./ground-length.ts";
import { linePostStations } from "./line-posts.ts";
import type { RowDraft } from "./row-draft.ts";
import type { BlockRows, Positions, Row, Rows } from "./rows.ts";
import { vineStations } from "./vines.ts";

/**
 * The rows of all blocks with their vines, line posts and stakes, and their lengths along the ground; those that lie partly where no height
 * is known keep their level length. Ids carry the block when there are several. Findings: `rows/heights-missing`.
 */
export function layRows(
  blocks: readonly Block[],
  numbered: readonly NumberedRows[],
  elevation: Elevation,
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
      rows.push({
        id,
        block: block.id,
        number,
        start: row.start,
        end: row.end,
        length_m: row.length_m,
        groundLength_m: ground_m ?? row.length_m,
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

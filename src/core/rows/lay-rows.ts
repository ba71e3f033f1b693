import type { Block } from "../project/project.ts";
import type { NumberedRows } from "./block-rows.ts";
import { linePostStations } from "./line-posts.ts";
import type { BlockRows, Positions, Row, Rows } from "./rows.ts";
import { vineStations } from "./vines.ts";

/** The rows of all blocks with their vines, line posts and stakes. Ids carry the block when there are several. */
export function layRows(blocks: readonly Block[], numbered: readonly NumberedRows[]): Rows {
  const rows: Row[] = [];
  const vines = positionDraft();
  const linePosts = positionDraft();
  const stakes = positionDraft();
  const results: BlockRows[] = [];
  blocks.forEach((block, i) => {
    const result = numbered[i];
    if (result === undefined) return;
    const settings = block.rows;
    const first = rows.length;
    let length_m = 0;
    for (const { row, number, label } of result.rows) {
      const vineAt = vineStations(
        row.layout.firstVine_m - row.layout.from_m,
        row.layout.vines,
        settings.vineSpacing_m,
        row.gaps,
      );
      const postAt = linePostStations(row.layout, block.rows, row.gaps);
      const stakeAt = vineAt.flatMap((at) => Array.from({ length: block.trellis.stakesPerVine }, () => at));
      const place = { start: row.start, end: row.end, length_m: row.length_m };
      addPositions(vines, vineAt, place);
      addPositions(linePosts, postAt, place);
      addPositions(stakes, stakeAt, place);
      length_m += row.length_m;
      rows.push({
        id: blocks.length > 1 ? `${block.id}-${label}` : label,
        block: block.id,
        number,
        start: row.start,
        end: row.end,
        length_m: row.length_m,
        groundLength_m: row.length_m,
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
  });
  return {
    rows,
    blocks: results,
    vines: positionsOf(vines),
    linePosts: positionsOf(linePosts),
    stakes: positionsOf(stakes),
  };
}

interface PositionDraft {
  readonly offsets: number[];
  readonly station_m: number[];
  readonly xy: number[];
}

function positionDraft(): PositionDraft {
  return { offsets: [0], station_m: [], xy: [] };
}

function addPositions(
  to: PositionDraft,
  stations: readonly number[],
  row: { readonly start: Row["start"]; readonly end: Row["end"]; readonly length_m: number },
): void {
  const [x, y] = row.start;
  const dx = (row.end[0] - x) / row.length_m;
  const dy = (row.end[1] - y) / row.length_m;
  for (const station of stations) {
    to.station_m.push(station);
    to.xy.push(x + station * dx, y + station * dy);
  }
  to.offsets.push(to.station_m.length);
}

function positionsOf(draft: PositionDraft): Positions {
  return {
    offsets: Uint32Array.from(draft.offsets),
    station_m: Float64Array.from(draft.station_m),
    xy: Float64Array.from(draft.xy),
  };
}

import type { HeightAt } from "../ground/elevation.ts";
import type { Mainline } from "../mainline/water-end.ts";
import type { Block } from "../project/project.ts";
import type { Row, Rows } from "../rows/rows.ts";
import type { Trellis } from "../trellis/trellis.ts";
import { emittersAlong } from "./emitters-along.ts";
import { heightAtShare, heightsAlong, riseAtShare } from "./heights-along.ts";
import { hoseLength_m } from "./hose.ts";
import { dripHeight_m, lead_m } from "./riser.ts";
import { varietyNumbers } from "./varieties.ts";
import type { LateralsJob } from "./watering-job.ts";

/** Less than this is level. */
const level_m = 1e-6;

interface Lateral {
  readonly row: number;
  readonly point: number;
  readonly riser_m: number;
  readonly hose_m: number;
  readonly tailHeight_m: number;
  readonly at_m: Float64Array;
  readonly height_m: Float64Array;
  readonly isKnown: boolean;
}

/**
 * The laterals of all rows with vines. Heights are those of the ground about a post spacing apart with the height of the drip wire on top; where
 * they are not known, as `unknown_m`. `under_m`: from the ground to the middle of the main line's pipe.
 */
export function lateralsJob(
  rows: Rows,
  { waterEnd, route }: Pick<Mainline, "waterEnd" | "route">,
  blocks: readonly Block[],
  trellis: Pick<Trellis, "blocks">,
  heightAt: HeightAt,
  { under_m, unknown_m }: { readonly under_m: number; readonly unknown_m: number },
): { readonly laterals: LateralsJob; readonly isKnown: boolean } {
  const tees = new Map<number, number>();
  route?.row.forEach((row, point) => {
    if (row >= 0) tees.set(row, point);
  });
  const numbers = new Map(blocks.map(({ id }, i) => [id, i]));
  const blockOf = (row: Row): Block => {
    const block = blocks[numbers.get(row.block) ?? -1];
    if (block === undefined) throw new Error(`row ${row.id} is of block ${row.block}, which the project does not have`);
    return block;
  };
  const heights_m = new Map(blocks.map(({ id }) => [id, dripHeight_m(id, trellis)]));
  const laterals = rows.rows.flatMap((row, i) => (row.vines === 0 ? [] : [lateralOf(row, i)]));
  const own = laterals.map(({ row }) => rows.rows[row]).filter((row) => row !== undefined);
  return {
    laterals: {
      row: Int32Array.from(laterals, ({ row }) => row),
      point: Int32Array.from(laterals, ({ point }) => point),
      block: Int32Array.from(own, ({ block }) => numbers.get(block) ?? -1),
      line: Int32Array.from(own, ({ number }) => number),
      variety: varietyNumbers(own, blocks),
      vines: Int32Array.from(own, ({ vines }) => vines),
      riser_m: Float64Array.from(laterals, ({ riser_m }) => riser_m),
      hose_m: Float64Array.from(laterals, ({ hose_m }) => hose_m),
      tailHeight_m: Float64Array.from(laterals, ({ tailHeight_m }) => tailHeight_m),
      offsets: offsetsOf(laterals.map(({ at_m }) => at_m.length)),
      at_m: joined(laterals.map(({ at_m }) => at_m)),
      height_m: joined(laterals.map(({ height_m }) => height_m)),
    },
    isKnown: laterals.every(({ isKnown }) => isKnown),
  };

  function lateralOf(row: Row, index: number): Lateral {
    const block = blockOf(row);
    const end = waterEnd[index] ?? "start";
    const hose_m = hoseLength_m(rows, row, index, end, block.drip);
    const point = tees.get(index) ?? -1;
    const inGround_m =
      route === null || point < 0 ? 0 : lead_m(row, end, Number(route.xy[2 * point]), Number(route.xy[2 * point + 1]));
    const dripHeight = heights_m.get(row.block) ?? 0;
    const [from, to] = end === "start" ? [row.start, row.end] : [row.end, row.start];
    const step_m = block.rows.bay_vines * block.rows.vineSpacing_m;
    const along = heightsAlong(heightAt, from, to, step_m, unknown_m);
    const ground_m = row.groundLength_m;
    const shareOf = (hoseAt_m: number): number => hoseAt_m / (1 + block.drip.slack_ratio) / ground_m;
    const at_m = emittersAlong(
      {
        hose_m,
        vines_m: vinesFrom(end, rows, row, index),
        isRising: (reach_m) => riseAtShare(along, reach_m / ground_m) > level_m,
      },
      block.drip,
    );
    return {
      row: index,
      point,
      riser_m: inGround_m + under_m + dripHeight,
      hose_m,
      tailHeight_m: heightAtShare(along, shareOf(hose_m)) + dripHeight,
      at_m,
      height_m: at_m.map((each_m) => heightAtShare(along, shareOf(each_m)) + dripHeight),
      isKnown: along.isKnown,
    };
  }
}

/** Distances of the vines from the end post at the water end, along the ground, ascending. */
function vinesFrom(end: "start" | "end", { vines }: Rows, row: Row, index: number): Float64Array {
  const stations_m = vines.station_m.slice(vines.offsets[index] ?? 0, vines.offsets[index + 1] ?? 0);
  const stretch = row.groundLength_m / row.length_m;
  return end === "start"
    ? stations_m.map((station_m) => station_m * stretch)
    : stations_m.map((station_m) => (row.length_m - station_m) * stretch).reverse();
}

function offsetsOf(counts: readonly number[]): Uint32Array {
  const offsets = new Uint32Array(counts.length + 1);
  counts.forEach((count, i) => {
    offsets[i + 1] = Number(offsets[i]) + count;
  });
  return offsets;
}

function joined(parts: readonly Float64Array[]): Float64Array {
  const all = new Float64Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    all.set(part, at);
    at += part.length;
  }
  return all;
}

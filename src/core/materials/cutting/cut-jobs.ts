import type { Drip } from "../../drip/drip.ts";
import type { Block, MaterialSettings } from "../../project/project.ts";
import type { Rows } from "../../rows/rows.ts";
import { wireMass_kgpm } from "../../trellis/mechanics/steel.ts";
import type { Trellis } from "../../trellis/trellis.ts";
import { dripArticles } from "../drip-articles.ts";
import { coilSizes, stockCoils_m } from "./coil-sizes.ts";
import type { CutJob, CutRun } from "./cut-job.ts";

/**
 * What has to be cut: a job for every article of wire, in the order of the trellis, then one for every kind of hose. Runs are in the order of the rows.
 * They may be joined in the middle of bays between two line posts, never in the first or the last bay, where tie-offs and braces are
 * (common practice, no source). Coils are those of the price list where it names sizes of the article; heavier ones than the person can
 * handle are left out.
 */
export function cutJobs(
  rows: Rows,
  trellis: Trellis,
  drip: Drip,
  blocks: readonly Block[],
  settings: MaterialSettings,
): readonly CutJob[] {
  const { cutting } = settings;
  const common = {
    reserve_ratio: cutting.reserve_ratio,
    reserve_m: cutting.reserve_m,
    slop_m: cutting.slop_m,
    joinLength_m: cutting.joinLength_m,
  };
  const bays = rows.rows.map((_, i) => innerBays_m(rows, i));
  const wires = trellis.wires.map(({ article }): CutJob => {
    const mass_kgpm = massOf(trellis, article);
    return {
      article,
      runs: wireRuns(rows, trellis, article, cutting.wireJoins === "allowed" ? bays : null),
      onHand_m: stockCoils_m(article, settings),
      ...coilSizes(article, settings.wireCoils_m, mass_kgpm, settings),
      ...common,
      joinPrice: cutting.wireJoinPrice,
    };
  });
  const articles = dripArticles(blocks);
  const hoseOf = (row: number) => articles.get(rows.rows[row]?.block ?? "")?.hose;
  const laterals = hoseRuns(rows, drip, cutting.hoseJoins === "allowed" ? bays : null);
  const hoses = [...new Set([...articles.values()].map(({ hose }) => hose))].map((article): CutJob => {
    return {
      article,
      runs: laterals.filter(({ row }) => hoseOf(row) === article),
      onHand_m: stockCoils_m(article, settings),
      ...coilSizes(article, settings.hoseCoils_m, null, settings),
      ...common,
      joinPrice: cutting.hoseJoinPrice,
    };
  });
  return [...wires, ...hoses].filter(({ runs }) => runs.length > 0);
}

/** Middles of the bays between two line posts of a row, as stations. */
function innerBays_m({ linePosts: { offsets, station_m } }: Rows, row: number): readonly number[] {
  const middles: number[] = [];
  for (let n = Number(offsets[row]) + 1; n < Number(offsets[row + 1]); n++) {
    middles.push((Number(station_m[n - 1]) + Number(station_m[n])) / 2);
  }
  return middles;
}

function wireRuns(
  { rows }: Rows,
  trellis: Trellis,
  article: string,
  bays: readonly (readonly number[])[] | null,
): readonly CutRun[] {
  const byBlock = new Map(trellis.blocks.map((each) => [each.block, each.wires]));
  return rows.flatMap((row, i) => {
    const along = row.groundLength_m / row.length_m;
    return (byBlock.get(row.block) ?? []).flatMap((hung, wire) => {
      const run = trellis.rows[i]?.runs[wire];
      if (hung.article !== article || run === undefined) return [];
      const before_m = hung.tieOffStart_m + hung.reach_m;
      const joinsAt_m = (bays?.[i] ?? []).map((at_m) => before_m + at_m * along);
      return Array.from({ length: run.count }, (_, copy) => ({
        row: i,
        wire,
        copy,
        length_m: run.length_m,
        joinsAt_m,
      }));
    });
  });
}

/** A lateral runs from the water end. */
function hoseRuns({ rows }: Rows, drip: Drip, bays: readonly (readonly number[])[] | null): readonly CutRun[] {
  return rows.flatMap((row, i) => {
    const length_m = drip.rows[i]?.lateral_m ?? 0;
    if (length_m === 0) return [];
    const along = row.groundLength_m / row.length_m;
    const fromWater = (bays?.[i] ?? []).map(
      (at_m) => along * (drip.rows[i]?.waterEnd === "end" ? row.length_m - at_m : at_m),
    );
    const joinsAt_m = fromWater.filter((at_m) => at_m < length_m).sort((a, b) => a - b);
    return [{ row: i, wire: 0, copy: 0, length_m, joinsAt_m }];
  });
}

function massOf(trellis: Trellis, article: string): number | null {
  const hung = trellis.blocks.flatMap(({ wires }) => wires).find((each) => each.article === article);
  return hung === undefined ? null : wireMass_kgpm(hung.wire);
}

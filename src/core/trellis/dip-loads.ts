import type { HeightAt } from "../ground/elevation.ts";
import type { Rows } from "../rows/rows.ts";
import type { DipLoad, EndLoads } from "./loads.ts";
import { gradeChange_n } from "./mechanics/end-statics.ts";

/** Less than this is held by the weight of any post. Common practice, no source. */
const held_n = 100;

/**
 * Line posts that the wires pull out of the ground, in the cold, because the ground before and behind them rises: T (sin f2 - sin f1) with
 * the slopes of the bays on both sides (calculation handbook 2.5). Posts held down, or pulled up by less than 100 N, are left out; so are
 * rows with a height that is not known.
 */
export function dipLoads(
  { rows, linePosts }: Rows,
  heightAt: HeightAt,
  ends: ReadonlyMap<string, EndLoads>,
): readonly DipLoad[] {
  const dips: DipLoad[] = [];
  rows.forEach((row, i) => {
    const tension_n = ends.get(row.block)?.coldestPull_n ?? 0;
    const [from, to] = [linePosts.offsets[i] ?? 0, linePosts.offsets[i + 1] ?? 0];
    let post_m = 0;
    let height_m = heightAt(row.start[0], row.start[1]);
    let before_ratio = Number.NaN;
    // From post to post, and to the end post behind the last one; the slope behind a post is the one before the next.
    for (let n = from; n <= to; n++) {
      const isPost = n < to;
      const next_m = isPost ? Number(linePosts.station_m[n]) : row.length_m;
      const nextHeight_m = isPost
        ? heightAt(Number(linePosts.xy[2 * n]), Number(linePosts.xy[2 * n + 1]))
        : heightAt(row.end[0], row.end[1]);
      const after_ratio =
        height_m === null || nextHeight_m === null ? Number.NaN : (nextHeight_m - height_m) / (next_m - post_m);
      if (after_ratio > before_ratio) {
        const uplift_n = gradeChange_n(tension_n, before_ratio, after_ratio);
        if (uplift_n > held_n) dips.push({ row: i, station_m: post_m, before_ratio, after_ratio, uplift_n });
      }
      post_m = next_m;
      height_m = nextHeight_m;
      before_ratio = after_ratio;
    }
  });
  return dips;
}

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
    const places = [
      { station_m: 0, x: row.start[0], y: row.start[1] },
      ...Array.from({ length: to - from }, (_, n) => ({
        station_m: Number(linePosts.station_m[from + n]),
        x: Number(linePosts.xy[2 * (from + n)]),
        y: Number(linePosts.xy[2 * (from + n) + 1]),
      })),
      { station_m: row.length_m, x: row.end[0], y: row.end[1] },
    ];
    const heights = places.map(({ x, y }) => heightAt(x, y));
    for (let n = 1; n + 1 < places.length; n++) {
      const slope = (a: number, b: number) => {
        const rise = (heights[b] ?? Number.NaN) - (heights[a] ?? Number.NaN);
        return rise / (Number(places[b]?.station_m) - Number(places[a]?.station_m));
      };
      const [before_ratio, after_ratio] = [slope(n - 1, n), slope(n, n + 1)];
      const uplift_n = gradeChange_n(tension_n, before_ratio, after_ratio);
      if (uplift_n > held_n) {
        dips.push({ row: i, station_m: Number(places[n]?.station_m), before_ratio, after_ratio, uplift_n });
      }
    }
  });
  return dips;
}

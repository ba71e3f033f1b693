import type { RowSettings } from "../project/project.ts";
import { isInGap, type RowLayout } from "./vines.ts";

/**
 * Stations of the line posts of a row, from its start. Bays of whole vine spacings, posts half-way between two vines; what does not
 * fill a bay is taken off the two end bays, which are shorter, never longer (common practice, no source). With aligned vines the posts
 * of all rows stand on one grid. As an option bays of equal length: max(1, round(L / bay)) of them, wherever the vines stand.
 * A post that would stand in a gap moves to the nearest free place half-way between two vines, and is left out when there is none.
 */
export function linePostStations(
  row: RowLayout,
  settings: RowSettings,
  gaps: readonly (readonly [from_m: number, to_m: number])[],
): readonly number[] {
  const { vineSpacing_m, bay_vines } = settings;
  const length_m = row.to_m - row.from_m;
  if (settings.bays === "equal") {
    const bays = Math.max(1, Math.round(length_m / (bay_vines * vineSpacing_m)));
    return Array.from({ length: bays - 1 }, (_, i) => ((i + 1) * length_m) / bays).filter((at) => !isInGap(at, gaps));
  }
  const halfWay = (vinesBefore: number) => row.firstVine_m - row.from_m + (vinesBefore - 0.5) * vineSpacing_m;
  const posts = new Set<number>();
  for (const wanted of vinesBeforePosts(row, settings)) {
    for (let step = 0; step < bay_vines; step++) {
      const free = [wanted - step, wanted + step].find(
        (n) => n > 0 && n < row.vines && !posts.has(n) && !isInGap(halfWay(n), gaps),
      );
      if (free === undefined) continue;
      posts.add(free);
      break;
    }
  }
  return [...posts].sort((a, b) => a - b).map(halfWay);
}

/** For each line post how many vines stand between it and the start. */
function vinesBeforePosts(row: RowLayout, settings: RowSettings): readonly number[] {
  const { bay_vines } = settings;
  const posts: number[] = [];
  let next: number;
  if (settings.vines === "aligned") {
    next = bay_vines - (((row.gridIndex % bay_vines) + bay_vines) % bay_vines);
  } else {
    const missing = Math.ceil(row.vines / bay_vines) * bay_vines - row.vines;
    next = bay_vines - Math.floor(missing / 2);
  }
  for (; next < row.vines; next += bay_vines) posts.push(next);
  return posts;
}

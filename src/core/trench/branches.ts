import { legLengths_m, type Route } from "../mainline/route.ts";
import type { Branch } from "./trench.ts";

/** The route as runs without a junction inside: at every junction the longest way on belongs to the run that comes in. */
export function branchesOf(route: Route): readonly Branch[] {
  return runsOf(route, () => true).map((points, i) => ({ name: i === 0 ? "main" : branchName(i - 1), points }));
}

/**
 * What is laid of the route as such runs: points from the upstream end. `isLaid` tells it of the leg up to a point. Runs that begin where nothing
 * laid comes in stand before those that leave them.
 */
export function runsOf(
  route: Pick<Route, "xy" | "upstream">,
  isLaid: (point: number) => boolean,
): readonly (readonly number[])[] {
  const count = route.upstream.length;
  const legs_m = legLengths_m(route);
  const beyond_m = new Float64Array(count);
  const next: number[][] = Array.from({ length: count }, () => []);
  for (let i = count - 1; i > 0; i--) {
    if (!isLaid(i)) continue;
    const from = route.upstream[i] ?? 0;
    beyond_m[from] = Math.max(beyond_m[from] ?? 0, (beyond_m[i] ?? 0) + (legs_m[i] ?? 0));
    next[from]?.unshift(i);
  }
  const far_m = (i: number): number => (legs_m[i] ?? 0) + (beyond_m[i] ?? 0);
  const runs: (readonly number[])[] = [];
  for (const [root, onward] of next.entries()) {
    if (onward.length === 0 || (root > 0 && isLaid(root))) continue;
    const waiting: (readonly number[])[] = [[root]];
    for (let run = waiting.shift(); run !== undefined; run = waiting.shift()) {
      const points = [...run];
      for (;;) {
        const at = points.at(-1) ?? 0;
        const ways = next[at] ?? [];
        const longest = ways.reduce<number | null>(
          (best, i) => (best === null || far_m(i) > far_m(best) ? i : best),
          null,
        );
        if (longest === null) break;
        for (const other of ways) if (other !== longest) waiting.push([at, other]);
        points.push(longest);
      }
      runs.push(points);
    }
  }
  return runs;
}

/** a, b, … z, aa, ab, … */
function branchName(i: number): string {
  const letter = String.fromCharCode(97 + (i % 26));
  return i < 26 ? letter : branchName(Math.floor(i / 26) - 1) + letter;
}

import { ratingAt } from "../hydraulics/pipe-rating.ts";
import { pressureOf_kpa } from "../hydraulics/pressure-head.ts";
import { rise_kpa } from "../hydraulics/surge.ts";
import { closedHead_m } from "./closed-head.ts";
import { closingSurges } from "./closing-surges.ts";
import { highestInRows } from "./highest-in-rows.ts";
import { runningHeads_m } from "./running-heads.ts";
import type { HighestPressure, Watering } from "./watering.ts";
import type { WateringJob } from "./watering-job.ts";

/**
 * The most that each pipe, and hose and emitters of each block, have to stand, against what they do. Pipe that stays under water when valves are closed:
 * the supply's highest head at its lowest point, and a valve that closes on top of it. While running: the highest of all sets with a clean filter.
 * Pipe of the person's own size is left out: what it stands is not known.
 */
export function highestPressures(
  job: WateringJob,
  watered: Pick<Watering, "supply" | "sets" | "emitters" | "pipes">,
): readonly HighestPressure[] {
  const { supply, sets, pipes } = watered;
  if (supply === null || job.line === null) return [];
  const closed_m = closedHead_m(job, supply);
  const surges = closingSurges(job, watered);
  const running = sets.map((set) => runningHeads_m(job, supply, set));
  const ofPipes = pipes.flatMap((line, pipe): readonly HighestPressure[] => {
    const most_kpa = ratingAt(line.pipe.size, job.water.temperature_c);
    if (most_kpa === null) return [];
    const found: Found[] = [];
    if (line.line === 0 && job.sets.pattern !== "valves-at-source") {
      const low = lowestOf(job, line.points);
      found.push({ when: "closed", ...low, head_m: closed_m, surge: null });
      const surge = surges[pipe] ?? null;
      if (surge !== null) found.push({ when: "surge", ...low, head_m: closed_m, surge });
    }
    const most = hardestRunning(sets, running, pipe);
    if (most !== null) found.push(most);
    return found.map((each) => ({
      what: "pipe",
      pipe,
      lateral: -1,
      ...each,
      pressure_kpa: pressureOf_kpa(each.head_m - each.height_m) + (each.surge === null ? 0 : rise_kpa(each.surge)),
      most_kpa,
    }));
  });
  return [...ofPipes, ...highestInRows(job, watered, supply, running)];
}

type Found = Pick<HighestPressure, "when" | "point" | "head_m" | "height_m" | "surge">;

/** The lowest point of some legs, their upstream ends with them. */
function lowestOf({ line }: WateringJob, points: readonly number[]): Pick<Found, "point" | "height_m"> {
  let point = points[0] ?? 0;
  const heightAt = (at: number) => Number(line?.height_m[at]);
  for (const end of points) {
    for (const each of [Number(line?.upstream[end]), end]) {
      if (each >= 0 && heightAt(each) < heightAt(point)) point = each;
    }
  }
  return { point, height_m: heightAt(point) };
}

/** Where a pipe has most to stand while some set runs; null where none runs through it. */
function hardestRunning(sets: Watering["sets"], running: readonly Float64Array[], pipe: number): Found | null {
  let most: Found | null = null;
  for (const [set, { nodes }] of sets.entries()) {
    for (const [node, of] of nodes.pipe.entries()) {
      if (of !== pipe) continue;
      // Behind a regulator the node stands where the pipe before it ends, which has the pressure before it.
      for (const end of [Number(nodes.upstream[node]), node]) {
        const head_m = Number(running[set]?.[end]);
        const height_m = Number(nodes.height_m[end]);
        if (most !== null && head_m - height_m <= most.head_m - most.height_m) continue;
        most = { when: "running", point: Number(nodes.point[end]), head_m, height_m, surge: null };
      }
    }
  }
  return most;
}

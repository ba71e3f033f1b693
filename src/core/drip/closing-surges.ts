import { rise_kpa, type Surge, surgeOf, waveSpeedIn_mps } from "../hydraulics/surge.ts";
import type { PipeSettings } from "../project/project.ts";
import type { Watering, WaterSet } from "./watering.ts";
import type { WateringJob } from "./watering-job.ts";

/**
 * The hardest surge in each pipe that stays under water when valves are closed, by pipe; null where no flow is stopped. One valve closes at a time: that
 * of a set, or a row's cock. The rise at the valve counts all the way to the source: the fastest pipe's at once, all pipes' together slowly.
 */
export function closingSurges(
  job: WateringJob,
  { sets, emitters, pipes }: Pick<Watering, "sets" | "emitters" | "pipes">,
): readonly (Surge | null)[] {
  const hardest: (Surge | null)[] = pipes.map(() => null);
  const closing_s = job.water.closing_h * 3600;
  for (const set of sets) {
    const { nodes } = set;
    // For a flow of 1 L/s: the fastest stop, and length times velocity, from the source on.
    const fast = new Float64Array(nodes.pipe.length);
    const slow = new Float64Array(nodes.pipe.length);
    const stopped_lps = stoppedFlows_lps(job, emitters, set, pipes);
    const worst: (Surge | null)[] = new Array(nodes.pipe.length).fill(null);
    for (const [node, up] of nodes.upstream.entries()) {
      const line = pipes[Number(nodes.pipe[node])];
      if (up < 0 || line === undefined) continue;
      const each_m = Number(nodes.station_m[node]) - Number(nodes.station_m[up]);
      const one = surgeOf(waveSpeedOf(line.pipe), 1000 / area_mm2(line.pipe), each_m, closing_s);
      fast[node] = Math.max(Number(fast[up]), each_m > 0 ? one.fast_kpa : 0);
      slow[node] = Number(slow[up]) + one.slow_kpa;
      const own_lps = Number(stopped_lps[node]);
      if (own_lps > 0) {
        worst[node] = { fast_kpa: own_lps * Number(fast[node]), slow_kpa: own_lps * Number(slow[node]) };
      }
    }
    for (let node = nodes.pipe.length - 1; node > 0; node--) {
      const own = worst[node] ?? null;
      if (own === null) continue;
      const up = Number(nodes.upstream[node]);
      worst[up] = harder(worst[up] ?? null, own);
      const pipe = Number(nodes.pipe[node]);
      if (pipes[pipe]?.line === 0) hardest[pipe] = harder(hardest[pipe] ?? null, own);
    }
  }
  return hardest;
}

/** The flow, L/s, that a valve at each node stops, and with it the water in the main line up to there; 0 where none is. */
function stoppedFlows_lps(
  { sets, laterals }: WateringJob,
  emitters: Watering["emitters"],
  { nodes, flow_lps }: WaterSet,
  pipes: Watering["pipes"],
): Float64Array {
  const stopped_lps = new Float64Array(nodes.pipe.length);
  if (sets.pattern === "valve-a-set") {
    let valve = 0;
    for (const [node, pipe] of nodes.pipe.entries()) {
      if (pipes[pipe]?.line === 0 && Number(nodes.station_m[node]) > Number(nodes.station_m[valve])) valve = node;
    }
    stopped_lps[valve] = flow_lps;
  }
  if (sets.pattern === "cock-a-row" && emitters !== null) {
    for (const [node, lateral] of nodes.lateral.entries()) {
      if (lateral < 0) continue;
      const own = emitters.flow_lps.subarray(laterals.offsets[lateral], laterals.offsets[lateral + 1]);
      stopped_lps[node] = own.reduce((sum, each) => sum + each, 0);
    }
  }
  return stopped_lps;
}

function harder(one: Surge | null, other: Surge): Surge {
  return one !== null && rise_kpa(one) >= rise_kpa(other) ? one : other;
}

/** Coiled pipe is polyethylene. */
function waveSpeedOf({ joint, outside_mm, inside_mm }: PipeSettings): number {
  return waveSpeedIn_mps(joint === "barbed" ? "pe" : "pvc", outside_mm, inside_mm);
}

function area_mm2({ inside_mm }: PipeSettings): number {
  return (Math.PI / 4) * inside_mm ** 2;
}

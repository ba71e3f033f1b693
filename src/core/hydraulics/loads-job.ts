import type { SizingJob } from "./sizing-job.ts";

/** One of several uses of a tree of pipes, of which only one runs at a time. */
export interface Load {
  /** By pipe; 0 where it takes nothing. */
  readonly flow_lps: Float64Array;
  /** Total head wanted at the downstream end of each pipe; -Infinity where none is. */
  readonly wanted_m: Float64Array;
  /** Total head at the source while it runs. */
  readonly source_m: number;
}

/** A tree of pipes that is to serve several loads, one after another. */
export interface LoadsJob extends Omit<SizingJob, keyof Load | "least"> {
  readonly loads: readonly Load[];
  /** Index of the smallest size each pipe may have; null: any. */
  readonly least: Uint8Array | null;
}

/** A load's pipes, by their index among all, and its own job. */
export interface LoadJob {
  readonly pipes: readonly number[];
  readonly job: SizingJob;
}

/** The pipes that a load takes water through, as a tree of their own. */
export function loadJob(job: LoadsJob, load: Load): LoadJob {
  const pipes: number[] = [];
  const place = new Int32Array(job.upstream.length).fill(-1);
  for (const [pipe, flow] of load.flow_lps.entries()) {
    if (flow <= 0) continue;
    place[pipe] = pipes.length;
    pipes.push(pipe);
  }
  const upstream = Int32Array.from(pipes, (pipe) => {
    const up = Number(job.upstream[pipe]);
    return up < 0 ? -1 : Number(place[up]);
  });
  const taken = (of: Float64Array) => Float64Array.from(pipes, (pipe) => Number(of[pipe]));
  return {
    pipes,
    job: {
      ...job,
      upstream,
      length_m: taken(job.length_m),
      flow_lps: taken(load.flow_lps),
      wanted_m: taken(load.wanted_m),
      source_m: load.source_m,
      least: null,
    },
  };
}

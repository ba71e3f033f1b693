import { pipeLosses } from "./pipe-losses.ts";
import { type SizingJob, sizePipes } from "./size-pipes.ts";

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

export interface LoadsSizing {
  /** Index into the sizes, by pipe. */
  readonly size: Uint8Array;
  readonly cost: number;
  /** By load: total head at the downstream end of each pipe, with these sizes; NaN where it takes nothing. */
  readonly head_m: readonly Float64Array[];
  /** By load: even the widest pipes do not give it what it wants. It gets the widest. */
  readonly isShort: readonly boolean[];
}

/** Rounds in which every load is looked at again beside the others. */
const mostRounds = 3;

/**
 * Sizes that serve every load, at little cost: the loads are sized one after another, none smaller than an earlier one needs, and then each once
 * more beside all others as long as that saves something. Each single step is at least cost; for one load, so is the whole.
 */
export function sizeForLoads(job: LoadsJob, fineness?: readonly number[]): LoadsSizing {
  const own = job.loads.map((load) => loadJob(job, load));
  let needs: readonly (Uint8Array | null)[] = own.map(() => null);
  const seen: (Uint8Array | null)[] = own.map(() => null);
  let cost = Infinity;
  let size = new Uint8Array(job.upstream.length);
  for (let round = 0; round < mostRounds; round++) {
    const next = [...needs];
    for (const [k, { pipes, job: sub }] of own.entries()) {
      const others = widest(
        job,
        next.filter((_, i) => i !== k),
      );
      if (isStillBest(pipes, next[k] ?? null, seen[k] ?? null, others)) continue;
      seen[k] = others;
      const sized = sizePipes({ ...sub, least: Uint8Array.from(pipes, (pipe) => Number(others[pipe])) }, fineness);
      next[k] = spread(job, pipes, sized?.size ?? null);
    }
    const together = widest(job, next);
    const sum = costOf(job, together);
    if (sum >= cost) break;
    needs = next;
    cost = sum;
    size = together;
    if (own.length < 2) break;
  }
  const heads = own.map(({ pipes, job: sub }) => headsOf(job, pipes, sub, size));
  return {
    size,
    cost,
    head_m: heads.map(({ head_m }) => head_m),
    isShort: heads.map(({ isShort }) => isShort),
  };
}

/** Sizes that were the cheapest ones beside narrower pipes of others, and are no narrower than these are now, are so still. */
function isStillBest(
  pipes: readonly number[],
  size: Uint8Array | null,
  before: Uint8Array | null,
  now: Uint8Array,
): boolean {
  if (size === null || before === null) return false;
  return pipes.every((pipe) => Number(before[pipe]) <= Number(now[pipe]) && Number(now[pipe]) <= Number(size[pipe]));
}

/** The pipes that a load takes water through, as a tree of their own. */
function loadJob(job: LoadsJob, load: Load): { readonly pipes: readonly number[]; readonly job: SizingJob } {
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

/** Sizes of a load's pipes among all; the widest ones where it can not be served. */
function spread({ upstream, sizes }: LoadsJob, pipes: readonly number[], size: Uint8Array | null): Uint8Array {
  const all = new Uint8Array(upstream.length);
  for (const [i, pipe] of pipes.entries()) all[pipe] = size === null ? sizes.length - 1 : Number(size[i]);
  return all;
}

/** The widest that any of several asks for, by pipe. */
function widest(job: LoadsJob, needs: readonly (Uint8Array | null)[]): Uint8Array<ArrayBuffer> {
  const size = new Uint8Array(job.upstream.length);
  for (const need of [job.least, ...needs]) {
    if (need === null) continue;
    for (const [pipe, each] of need.entries()) if (each > Number(size[pipe])) size[pipe] = each;
  }
  return size;
}

function costOf({ length_m, sizes }: LoadsJob, size: Uint8Array): number {
  let sum = 0;
  for (const [pipe, each_m] of length_m.entries()) sum += each_m * (sizes[Number(size[pipe])]?.cost_pm ?? 0);
  return sum;
}

/** Heads of one load with sizes as they are, and whether something it wants is not there: head, or a velocity under the cap. */
function headsOf(
  { upstream, sizes }: LoadsJob,
  pipes: readonly number[],
  job: SizingJob,
  size: Uint8Array,
): { readonly head_m: Float64Array; readonly isShort: boolean } {
  const { loss_m, least } = pipeLosses({ ...job, mostVelocity_mps: Infinity, least: null });
  const allowed = pipeLosses({ ...job, least: null }).least;
  const head_m = new Float64Array(upstream.length).fill(Number.NaN);
  let isShort = least.length !== allowed.length;
  for (const [i, pipe] of pipes.entries()) {
    const up = Number(upstream[pipe]);
    const own = Number(size[pipe]);
    const at_m = (up < 0 ? job.source_m : Number(head_m[up])) - Number(loss_m[i * sizes.length + own]);
    head_m[pipe] = at_m;
    if (at_m < Number(job.wanted_m[i]) - dust_m || own < Number(allowed[i])) isShort = true;
  }
  return { head_m, isShort };
}

/** Rounding of sums of heads. */
const dust_m = 1e-6;

import { headsOfLoad } from "./heads-of-load.ts";
import { type LoadsJob, loadJob } from "./loads-job.ts";
import { sizePipes } from "./size-pipes.ts";

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
  const heads = own.map((each) => headsOfLoad(job, each, size));
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

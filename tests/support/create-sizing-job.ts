import { pipeLosses } from "../../src/core/hydraulics/pipe-losses.ts";
import type { SizeChoice, SizingJob } from "../../src/core/hydraulics/sizing-job.ts";
import { between, createRandom, type Random, wholeBetween } from "./random.ts";

/** Inside diameters of PVC Schedule 40 from 3/4 in to 4 in, and invented prices a metre. */
export const sizeChoices: readonly SizeChoice[] = [
  { inside_mm: 20.574, cost_pm: 1.1 },
  { inside_mm: 26.2382, cost_pm: 1.65 },
  { inside_mm: 34.6456, cost_pm: 2.25 },
  { inside_mm: 40.4368, cost_pm: 2.7 },
  { inside_mm: 52.0446, cost_pm: 3.6 },
  { inside_mm: 62.103, cost_pm: 5.75 },
  { inside_mm: 77.2668, cost_pm: 7.5 },
  { inside_mm: 101.5492, cost_pm: 10.7 },
];

const usual: SizingJob = {
  upstream: Int32Array.of(),
  length_m: Float64Array.of(),
  flow_lps: Float64Array.of(),
  wanted_m: Float64Array.of(),
  sizes: sizeChoices,
  least: null,
  source_m: 20,
  law: 1,
  roughness: 150,
  viscosity_m2ps: 1.004e-6,
  mostVelocity_mps: 1.5,
  isTapering: true,
};

/** One line of pipes, the flow in each, the same head wanted at the end of each. */
export function createSizingJob(wish: {
  readonly lengths_m: readonly number[];
  readonly flows_lps: readonly number[];
  readonly wanted_m: number;
  readonly source_m: number;
}): SizingJob {
  return {
    ...usual,
    upstream: Int32Array.from(wish.lengths_m, (_, i) => i - 1),
    length_m: Float64Array.from(wish.lengths_m),
    flow_lps: Float64Array.from(wish.flows_lps),
    wanted_m: Float64Array.from(wish.lengths_m, () => wish.wanted_m),
    source_m: wish.source_m,
  };
}

/** A tree of so many pipes with a takeoff at the end of each, on ground that goes up and down by 3 m, and only some of the sizes. */
export function randomTree(random: Random, pipes: number, sizes: number): SizingJob {
  const upstream = Int32Array.from({ length: pipes }, (_, i) =>
    i === 0 ? -1 : wholeBetween(random, Math.max(-1, i - 3), i - 1),
  );
  const flow_lps = Float64Array.from({ length: pipes }, () => between(random, 0.05, 0.8));
  for (let i = pipes - 1; i > 0; i--) {
    const up = Number(upstream[i]);
    if (up >= 0) flow_lps[up] = Number(flow_lps[up]) + Number(flow_lps[i]);
  }
  return {
    ...usual,
    upstream,
    length_m: Float64Array.from({ length: pipes }, () => between(random, 5, 120)),
    flow_lps,
    wanted_m: Float64Array.from({ length: pipes }, () => (random() < 0.2 ? -Infinity : between(random, 9, 12))),
    sizes: sizeChoices.slice(8 - sizes - 1, 7),
    mostVelocity_mps: between(random, 1, 2.5),
  };
}

export interface ManyTees {
  readonly name: string;
  readonly tees: number;
  /** Submains that leave the main line; 0: all tees stand on the main line. */
  readonly submains: number;
  readonly flow_lps: number;
  readonly source_m: number;
  readonly isTapering: boolean;
}

/** Main lines with many tees, as an answer is stored of (`tests/fixtures/pipe-sizes/optimal.json`): tight and loose, free and never wider downstream. */
export const manyTees: readonly ManyTees[] = [false, true].flatMap((isTapering) => [
  { name: "60 tees", tees: 60, submains: 0, flow_lps: 2.4, source_m: 14, isTapering },
  { name: "60 tees, tight", tees: 60, submains: 0, flow_lps: 2.4, source_m: 11.5, isTapering },
  { name: "400 tees", tees: 400, submains: 0, flow_lps: 6, source_m: 20, isTapering },
  { name: "400 tees on 8 submains", tees: 400, submains: 8, flow_lps: 8, source_m: 18, isTapering },
]);

/** The job: 100 m to the first tee or submain, tees 2.4 to 3.2 m apart, ground that falls and rises by half a metre; the same for the same wish. */
export function createManyTees({ tees, submains, flow_lps, source_m, isTapering }: ManyTees): SizingJob {
  const random = createRandom(tees + submains);
  const each_lps = flow_lps / tees;
  const perSubmain = submains === 0 ? 0 : tees / submains;
  const upstream: number[] = [];
  const length_m: number[] = [];
  const wanted_m: number[] = [];
  const add = (up: number, each_m: number, wanted: number): number => {
    upstream.push(up);
    length_m.push(Math.round(each_m * 100) / 100);
    wanted_m.push(wanted);
    return upstream.length - 1;
  };
  const tee = (up: number, i: number): number =>
    add(up, i === 0 ? 100 : between(random, 2.4, 3.2), 10 + Math.round(50 * Math.sin(i / 20)) / 100);
  if (submains === 0) {
    for (let i = 0; i < tees; i++) tee(i - 1, i);
  } else {
    let main = -1;
    for (let k = 0; k < submains; k++) {
      main = add(main, k === 0 ? 100 : 30, -Infinity);
      let at = main;
      for (let i = 0; i < perSubmain; i++) at = tee(at, i + 1);
    }
  }
  const flows = wanted_m.map((wanted) => (wanted === -Infinity ? 0 : each_lps));
  for (let i = flows.length - 1; i > 0; i--) {
    const up = Number(upstream[i]);
    if (up >= 0) flows[up] = Number(flows[up]) + Number(flows[i]);
  }
  return {
    ...usual,
    upstream: Int32Array.from(upstream),
    length_m: Float64Array.from(length_m),
    flow_lps: Float64Array.from(flows),
    wanted_m: Float64Array.from(wanted_m),
    source_m,
    isTapering,
    mostVelocity_mps: 2,
  };
}

/** Heads at the downstream ends with sizes as they are. */
export function heldHeads_m(job: SizingJob, size: Uint8Array): Float64Array {
  const { loss_m } = pipeLosses({ ...job, mostVelocity_mps: Infinity });
  const head_m = new Float64Array(size.length);
  for (const [pipe, up] of job.upstream.entries()) {
    const before_m = up < 0 ? job.source_m : Number(head_m[up]);
    head_m[pipe] = before_m - Number(loss_m[pipe * job.sizes.length + Number(size[pipe])]);
  }
  return head_m;
}

/** The least cost of all ways to size a small tree; null where none serves. */
export function cheapestByEnumeration(job: SizingJob): number | null {
  const pipes = job.upstream.length;
  const size = new Uint8Array(pipes);
  const losses = pipeLosses(job);
  let least = Infinity;
  const choose = (pipe: number, cost: number, heads_m: readonly number[]): void => {
    if (pipe === pipes) {
      least = Math.min(least, cost);
      return;
    }
    const up = Number(job.upstream[pipe]);
    const widest = job.isTapering && up >= 0 ? Number(size[up]) : job.sizes.length - 1;
    for (let d = Number(losses.least[pipe]); d <= widest; d++) {
      const at_m = (up < 0 ? job.source_m : Number(heads_m[up])) - Number(losses.loss_m[pipe * job.sizes.length + d]);
      if (at_m < Number(job.wanted_m[pipe])) continue;
      size[pipe] = d;
      choose(pipe + 1, cost + Number(job.length_m[pipe]) * (job.sizes[d]?.cost_pm ?? 0), [...heads_m, at_m]);
    }
  };
  choose(0, 0, []);
  return least === Infinity ? null : least;
}

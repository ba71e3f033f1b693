import type { SizingJob } from "./size-pipes.ts";

/** Head that each pipe of a tree loses at each size, and which sizes it may have. */
export interface PipeLosses {
  /** By pipe, then by size. */
  readonly loss_m: Float64Array;
  /** Index of the smallest size each pipe may have; the number of sizes where none is wide enough. */
  readonly least: Uint8Array;
}

/** Losses of every pipe at every size, m, and the smallest size that keeps the velocity cap and what is asked for at least. */
export function pipeLosses(job: SizingJob): PipeLosses {
  const { sizes, length_m, flow_lps } = job;
  const loss_m = new Float64Array(length_m.length * sizes.length);
  const least = new Uint8Array(length_m.length);
  for (const [pipe, each_m] of length_m.entries()) {
    const flow = flow_lps[pipe] ?? 0;
    const narrowest_mm = leastInside_mm(flow, job.mostVelocity_mps) * (1 - 1e-12);
    let from = sizes.length;
    for (let d = sizes.length - 1; d >= (job.least?.[pipe] ?? 0); d--) {
      const { inside_mm } = sizes[d] ?? { inside_mm: 0 };
      if (inside_mm < narrowest_mm) break;
      loss_m[pipe * sizes.length + d] = each_m * slope(job, flow, inside_mm);
      from = d;
    }
    least[pipe] = from;
  }
  return { loss_m, least };
}

/** Inside diameter, mm, at which a flow in L/s runs just at a velocity in m/s. */
export function leastInside_mm(flow_lps: number, velocity_mps: number): number {
  return Math.sqrt((4 * flow_lps * 1000) / (Math.PI * velocity_mps));
}

function slope({ law, roughness, viscosity_m2ps }: SizingJob, flow_lps: number, inside_mm: number): number {
  if (flow_lps <= 0) return 0;
  const flow_m3ps = flow_lps / 1000;
  const inside_m = inside_mm / 1000;
  if (law === 1) return 10.667 * (flow_m3ps / roughness) ** 1.852 * inside_m ** -4.871;
  const velocity_mps = flow_m3ps / ((Math.PI / 4) * inside_m ** 2);
  const reynolds = (velocity_mps * inside_m) / viscosity_m2ps;
  const friction = reynolds < 2000 ? 64 / reynolds : 0.3164 * reynolds ** -0.25;
  return (friction * velocity_mps ** 2) / (2 * 9.80665 * inside_m);
}

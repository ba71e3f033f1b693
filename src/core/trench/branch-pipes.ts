import type { PipeSettings } from "../project/project.ts";
import type { BranchPipe } from "./trench.ts";

/** What goes into a bell, as so many outside diameters: cemented, and gasketed. Common practice, no source. */
const bells = { solvent: 1.5, gasket: 2, barbed: 0 } as const;
const dust = 1e-9;

/** How much of a stick the next one takes in. */
export function bell_m({ joint, outside_mm }: Pick<PipeSettings, "joint" | "outside_mm">): number {
  return (bells[joint] * outside_mm) / 1000;
}

/** Sticks that cover a length laid end to end, each after the first going into the bell before it; n (s - b) + b >= L. */
export function sticksFor(length_m: number, stick_m: number, bellDepth_m: number): number {
  if (length_m <= dust) return 0;
  return Math.max(1, Math.ceil((length_m - bellDepth_m) / (stick_m - bellDepth_m) - dust));
}

/**
 * How every branch is laid. Sticks are laid end to end and cut only at tees and at the end, so what is left over is left over once a branch.
 * Coiled pipe goes on from branch to branch, and what is left over is left over once.
 */
export function branchPipes(lengths_m: readonly number[], pipe: PipeSettings): readonly BranchPipe[] {
  const { stick_m, joint } = pipe;
  if (joint === "barbed") return coiled(lengths_m, stick_m);
  return lengths_m.map((length_m) => {
    const sticks = sticksFor(length_m, stick_m, bell_m(pipe));
    return { length_m, sticks, joints: Math.max(0, sticks - 1), waste_m: sticks * stick_m - length_m };
  });
}

function coiled(lengths_m: readonly number[], coil_m: number): readonly BranchPipe[] {
  let laid_m = 0;
  return lengths_m.map((length_m, i) => {
    const before = Math.floor(laid_m / coil_m + dust);
    laid_m += length_m;
    const coils = Math.ceil(laid_m / coil_m - dust);
    const isLast = i === lengths_m.length - 1;
    return {
      length_m,
      sticks: length_m / coil_m,
      joints: Math.max(0, coils - 1 - before),
      waste_m: isLast ? coils * coil_m - laid_m : 0,
    };
  });
}

/** Sticks or coils to buy for all branches. */
export function sticksOf(pipes: readonly BranchPipe[]): number {
  return Math.ceil(pipes.reduce((sum, { sticks }) => sum + sticks, 0) - dust);
}

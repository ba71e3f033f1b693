import type { CuttingSettings, MaterialSettings } from "../project/project.ts";
import { coilSizes, stockCoils_m } from "./cutting/coil-sizes.ts";
import type { CoilSize, CutJob } from "./cutting/cut-job.ts";
import type { CutAnswer, CutPlan } from "./cutting/cut-plan.ts";
import { usable_m } from "./cutting/usable.ts";
import type { Pack } from "./material-line.ts";
import type { Need } from "./need.ts";
import { packagesFor } from "./packages.ts";
import { usualSizes } from "./sizes.ts";

const dust_m = 1e-9;

/** The answer of a cutting plan that is bought for; null when there is none. */
export function chosenAnswer(plan: CutPlan | null): CutAnswer | null {
  return plan === null || plan.chosen === null ? null : plan[plan.chosen];
}

/**
 * The coils of wire or hose to buy: by the cutting plan where there is one, in whole pieces where it is cut short (tie-backs), else by
 * length. A coil holds what is left of it after its reserve, and every cut takes its slop.
 */
export function coilPacks(
  need: Need,
  job: CutJob | null,
  plan: CutPlan | null,
  settings: MaterialSettings,
): readonly Pack[] {
  const { cutting } = settings;
  const sizes = job?.sizes ?? coilSizes(need.article, usualSizes(need.kind, settings), need.mass_kg, settings).sizes;
  const rooms_m = (job?.onHand_m ?? stockCoils_m(need.article, settings)).map((coil_m) => usable_m(coil_m, cutting));
  if (job === null)
    return piecePacks(
      need.pieces_m.map((piece_m) => piece_m + cutting.slop_m),
      rooms_m,
      sizes,
      cutting,
    );
  const answer = chosenAnswer(plan);
  const cut_m = (runs: readonly number[]) =>
    runs.reduce((sum_m, run) => sum_m + Number(job.runs[run]?.length_m) + cutting.slop_m, 0);
  if (answer === null) {
    const room_m = rooms_m.reduce((sum_m, each_m) => sum_m + Math.max(0, each_m), 0);
    return covering(cut_m([...job.runs.keys()]) - room_m, null, sizes, cutting);
  }
  const bought = answer.bought.map(({ length_m, count }): Pack => {
    const size = sizes.find((each) => each.length_m === length_m);
    return { size: length_m, count, price: size?.price ?? null, mass_kg: size?.mass_kg ?? null };
  });
  return added([...bought, ...covering(cut_m(plan?.uncut ?? []), null, sizes, cutting)]);
}

/** Coils for short pieces: the first that has room on hand gives each, and coils that are bought give the rest. */
function piecePacks(
  pieces_m: readonly number[],
  onHand_m: number[],
  sizes: readonly CoilSize[],
  cutting: CuttingSettings,
): readonly Pack[] {
  const left_m = pieces_m.filter((piece_m) => {
    const room = onHand_m.findIndex((each_m) => each_m + dust_m >= piece_m);
    if (room < 0) return true;
    onHand_m[room] = (onHand_m[room] ?? 0) - piece_m;
    return false;
  });
  const longest_m = left_m.reduce((most_m, piece_m) => Math.max(most_m, piece_m), 0);
  const alike = covering(left_m.length * longest_m, longest_m, sizes, cutting);
  // Filled as they come, no coil is closed with the longest piece's room left, whatever the pieces are.
  const sum_m = left_m.reduce((total_m, piece_m) => total_m + piece_m, 0);
  const unlike = packagesFor(
    sum_m,
    sizes.map((size) => ({ ...size, size: size.length_m, covers: usable_m(size.length_m, cutting) - longest_m })),
    "m",
  );
  return unlike.length > 0 && held_m(unlike) < held_m(alike) ? unlike : alike;
}

function held_m(packs: readonly Pack[]): number {
  return packs.reduce((sum_m, { size, count }) => sum_m + size * count, 0);
}

/** Coils that cover a length; of a coil that is cut into pieces only whole ones count. */
function covering(length_m: number, piece_m: number | null, sizes: readonly CoilSize[], cutting: CuttingSettings) {
  const whole = (given_m: number) => (piece_m === null ? given_m : Math.floor(given_m / piece_m + dust_m) * piece_m);
  return packagesFor(
    length_m,
    sizes.map((size) => ({ ...size, size: size.length_m, covers: whole(usable_m(size.length_m, cutting)) })),
    "m",
  );
}

/** Packages of one size together, largest first. */
function added(packs: readonly Pack[]): readonly Pack[] {
  const bySize = new Map<number, Pack>();
  for (const pack of packs) {
    bySize.set(pack.size, { ...pack, count: pack.count + (bySize.get(pack.size)?.count ?? 0) });
  }
  return [...bySize.values()].sort((a, b) => b.size - a.size);
}

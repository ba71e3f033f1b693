import { type Finding, type Phrase, quantity, say, unplaced } from "../../finding.ts";
import type { CoilSize, CutJob } from "./cut-job.ts";
import type { CutPlan } from "./cut-plan.ts";
import { usable_m } from "./usable.ts";

/** Share of what is bought that may be left over without a word. Common practice, no source. */
const muchLeft_ratio = 0.2;

/**
 * What there is to say about the coils of one article, called by `name`. Findings:
 * materials/run-longer-than-coil, materials/run-cannot-be-cut, materials/much-left-over, materials/coils-too-heavy,
 * materials/part-coil-too-short.
 */
export function cutFindings(job: CutJob, plan: CutPlan | null, name: Phrase): readonly Finding[] {
  if (plan === null) return [];
  const longest_m = job.runs.reduce((most_m, { length_m }) => Math.max(most_m, length_m), 0);
  const coil_m = Math.max(0, ...job.sizes.map(({ length_m }) => length_m), ...job.onHand_m);
  const answer = plan.chosen === null ? null : plan[plan.chosen];
  const left_m = (answer?.coils ?? []).reduce((sum_m, coil) => sum_m + (coil.isOnHand ? 0 : coil.left_m), 0);
  const bought_m = answer?.bought_m ?? 0;
  const shortest_m = job.runs.reduce((least_m, { length_m }) => Math.min(least_m, length_m), Infinity);
  const idle_m = job.onHand_m.filter((length_m) => usable_m(length_m, job) < shortest_m + job.slop_m);
  return [
    ...(plan.uncut.length > 0 ? [cannotBeCut(name, plan.uncut.length, longest_m, coil_m)] : []),
    ...(plan.uncut.length === 0 && plan.noJoins === null && answer !== null
      ? [longerThanCoil(name, longest_m, coil_m)]
      : []),
    ...(bought_m > 0 && left_m > muchLeft_ratio * bought_m ? [muchLeft(name, left_m, bought_m)] : []),
    ...(job.tooHeavy.length > 0 ? [tooHeavy(name, job.tooHeavy, job.sizes.length === 0)] : []),
    ...(idle_m.length > 0 && job.runs.length > 0 ? [partCoilTooShort(name, idle_m, shortest_m)] : []),
  ];
}

function longerThanCoil(name: Phrase, longest_m: number, coil_m: number): Finding {
  return unplaced(
    "materials/run-longer-than-coil",
    "warning",
    [
      ...name,
      ...say`: the longest run is ${quantity("length", longest_m)}; a coil holds ${quantity("length", coil_m)}, less its reserve.`,
    ],
    say`Such a run is joined within the row, in the middle of an inner bay.`,
    say`Buy longer coils, or break the row with a cross alley, where you want no join.`,
  );
}

function cannotBeCut(name: Phrase, runs: number, longest_m: number, coil_m: number): Finding {
  return unplaced(
    "materials/run-cannot-be-cut",
    "warning",
    [
      ...name,
      ...say`: ${runs} ${runs === 1 ? "run" : "runs"} of up to ${quantity("length", longest_m)} cannot be cut from coils of ${quantity("length", coil_m)}, and may not be joined where it would be needed.`,
    ],
    say`Coils on the list are counted by length; they do not give these runs.`,
    say`Buy longer coils, allow joins, or break the row with a cross alley.`,
  );
}

function muchLeft(name: Phrase, left_m: number, bought_m: number): Finding {
  return unplaced(
    "materials/much-left-over",
    "note",
    [...name, ...say`: of ${quantity("length", bought_m)} bought ${quantity("length", left_m)} stay on the spools.`],
    say`The runs do not divide the coils well.`,
    say`Try another size of coil, allow joins, or keep the rest for mending.`,
  );
}

function tooHeavy(name: Phrase, sizes: readonly CoilSize[], isAll: boolean): Finding {
  const lengths = sizes.flatMap(({ length_m, mass_kg }, i) => [
    ...say`${i === 0 ? "" : ", "}${quantity("length", length_m)} at ${quantity("mass", mass_kg ?? 0)}`,
  ]);
  return unplaced(
    "materials/coils-too-heavy",
    isAll ? "warning" : "note",
    [...name, ": coils heavier than you can handle are left out: ", ...lengths, "."],
    isAll ? say`No coil is left to plan with.` : say`The plan uses lighter coils, which may be more of them.`,
    say`Add a smaller size, or raise the limit where a second person or a machine helps.`,
  );
}

function partCoilTooShort(name: Phrase, idle_m: readonly number[], shortest_m: number): Finding {
  return unplaced(
    "materials/part-coil-too-short",
    "note",
    [
      ...name,
      ...say`: ${idle_m.length === 1 ? "a coil on hand of" : "coils on hand of"} ${quantity("length", Math.max(...idle_m))}${idle_m.length === 1 ? "" : " and less"} ${idle_m.length === 1 ? "is" : "are"} too short for the shortest run of ${quantity("length", shortest_m)}.`,
    ],
    say`Less its reserve nothing whole can be cut from it.`,
    say`Use it for joins, tie-backs or mending.`,
  );
}

import {
  type Account,
  account,
  accountInWords,
  commonPractice,
  geometry,
  input,
  inputs,
  remark,
} from "../../account.ts";
import { say } from "../../finding.ts";
import type { CutJob } from "./cut-job.ts";
import type { Cut, CutAnswer, CutCoil } from "./cut-plan.ts";
import { usable_m } from "./usable.ts";

const source = `${geometry}; reserve, slop and join length as set, ${commonPractice}`;

/** How what comes off the spool for one piece came about, m. */
export function takenAccount(job: CutJob, cut: Cut): Account {
  return account(
    {
      formula: say`Length of the piece, half a join’s length at each joined end, and what is lost at the cut.`,
      inputs: [
        input("Piece", "length", cut.to_m - cut.from_m),
        input("Joined ends", "count", joinedEnds(job, cut)),
        input("Length of a join", "length", job.joinLength_m),
        input("Lost at a cut", "length", job.slop_m),
      ],
      source,
    },
    (piece_m, ends, join_m, slop_m) => Number(piece_m) + (Number(ends) * Number(join_m)) / 2 + Number(slop_m),
  );
}

/** How what is left on a spool came about, m: its reserve is in it. */
export function leftAccount(job: CutJob, { length_m, cuts }: CutCoil): Account {
  return account(
    {
      formula: say`Length of the coil less its pieces, half a join’s length for every joined end, and what is lost at the cuts. The reserve is part of what is left.`,
      inputs: [
        input("Coil", "length", length_m),
        inputs(
          "Pieces",
          "length",
          cuts.map(({ from_m, to_m }) => to_m - from_m),
        ),
        input(
          "Joined ends",
          "count",
          cuts.reduce((ends, cut) => ends + joinedEnds(job, cut), 0),
        ),
        input("Length of a join", "length", job.joinLength_m),
        input("Cuts", "count", cuts.length),
        input("Lost at a cut", "length", job.slop_m),
      ],
      source,
    },
    (coil_m, pieces_m, ends, join_m, many, slop_m) =>
      Number(coil_m) - Number(pieces_m) - (Number(ends) * Number(join_m)) / 2 - Number(many) * Number(slop_m),
  );
}

/** How what a coil can give came about, m. */
export function usableAccount(job: CutJob, length_m: number): Account {
  return account(
    {
      formula: say`Length of the coil less a share of it (${percent(job.reserve_ratio)}) and a length that are kept back: coils run short, and the last turns kink.`,
      inputs: [
        input("Coil", "length", length_m),
        input("Share kept back, of it", "length", length_m * job.reserve_ratio),
        input("Kept back besides", "length", job.reserve_m),
      ],
      source: commonPractice,
    },
    (coil_m, share_m, reserve_m) => Number(coil_m) - Number(share_m) - Number(reserve_m),
  );
}

/**
 * Why fewer coils cannot be had: from the total length where that says it, else in words. Coils on hand are taken off with all they can give.
 */
export function boundAccount(job: CutJob, { bound }: CutAnswer): Account {
  const given_m = (length_m: number) => Math.max(0, usable_m(length_m, job));
  const largest_m = job.sizes.reduce((most_m, { length_m }) => Math.max(most_m, given_m(length_m)), 0);
  const byLength = account(
    {
      formula: say`All runs with what is lost at their cuts, less what coils on hand can give, divided by what the largest coil can give, rounded up.`,
      inputs: [
        inputs(
          "Runs",
          "length",
          job.runs.map(({ length_m }) => length_m),
        ),
        input("Cuts", "count", job.runs.length),
        input("Lost at a cut", "length", job.slop_m),
        inputs("Coils on hand can give", "length", job.onHand_m.map(given_m)),
        input("A coil can give", "length", largest_m),
      ],
      source,
    },
    (runs_m, cuts, slop_m, onHand_m, coil_m) => {
      const toBuy_m = Number(runs_m) + Number(cuts) * Number(slop_m) - Number(onHand_m);
      return Number(coil_m) === 0 ? 0 : Math.max(0, Math.ceil((toBuy_m - 1e-7) / Number(coil_m) - 1e-9));
    },
  );
  if (byLength.value === bound.coils) return byLength;
  return accountInWords({
    formula: say`${reasons[bound.by]}`,
    inputs: [
      remark("At least, by total length alone", `${byLength.value ?? 0}`),
      remark("At least, by how runs go together", `${bound.coils}`),
    ],
    source: "cutting-stock problem: linear program by column generation (Gilmore and Gomory), L2 (Martello and Toth)",
  });
}

const reasons: Readonly<Record<CutAnswer["bound"]["by"], string>> = {
  length: "The total length alone.",
  pairs: "Long runs need a coil each, and what the others need beyond the room those leave needs coils of its own.",
  "linear-program": "Even if coils could be cut in fractions of every way to fill one, so many are needed.",
  search: "Every way to fill fewer coils was tried, and none holds all runs.",
};

function joinedEnds(job: CutJob, { run, from_m, to_m }: Cut): number {
  return (from_m > 0 ? 1 : 0) + (to_m < Number(job.runs[run]?.length_m) ? 1 : 0);
}

function percent(ratio: number): string {
  return `${Number((100 * ratio).toFixed(2))} %`;
}

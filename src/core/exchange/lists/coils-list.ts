import { chosenAnswer } from "../../materials/coil-packs.ts";
import type { CutJob } from "../../materials/cutting/cut-job.ts";
import { isHose } from "../../materials/drip-articles.ts";
import type { Plan } from "../../plan.ts";
import { rowLabel } from "../positions.ts";
import { millimetres } from "../rounding.ts";
import { isSketch } from "../sketch.ts";
import type { Cell, List } from "./list.ts";

/**
 * The cut list for the spool: a line a cut, in the order of work. A coil is used up before the next is loaded; `taken_m` is what comes off,
 * with slop and the share of a join, and `left_m` what is on the spool after it. From and to are along the run, from the start of the row for
 * wire and from the water end for hose; a piece that is not the whole run is joined to the next. On an outline that was walked there is a last
 * column, `sketch`.
 */
export function coilsList(plan: Plan): List {
  const sketch = isSketch(plan);
  const lines = (plan.materials?.coils ?? []).flatMap(({ job, plan: cutPlan }) =>
    (chosenAnswer(cutPlan)?.coils ?? []).flatMap((coil, place) =>
      coil.cuts.map((cut, order): readonly Cell[] => {
        const run = job.runs[cut.run];
        const row = plan.rows?.rows[run?.row ?? -1];
        const isWhole = cut.from_m === 0 && cut.to_m >= (run?.length_m ?? 0);
        return [
          job.article,
          place + 1,
          millimetres(coil.length_m),
          coil.isOnHand ? "on hand" : "bought",
          order + 1,
          row?.block ?? null,
          row === undefined ? null : rowLabel(row),
          runName(plan, job, cut.run),
          millimetres(cut.from_m),
          millimetres(cut.to_m),
          isWhole ? null : "joined",
          millimetres(cut.taken_m),
          millimetres(cut.left_m),
          ...(sketch ? ["yes"] : []),
        ];
      }),
    ),
  );
  return { kind: "coils", heads: [...heads, ...(sketch ? ["sketch"] : [])], lines };
}

const heads = [
  "article",
  "coil",
  "coilLength_m",
  "coilFrom",
  "cut",
  "block",
  "row",
  "run",
  "from_m",
  "to_m",
  "join",
  "taken_m",
  "left_m",
] as const;

/** "fruiting wire at 0.914 m, second of the pair", or "lateral". */
function runName(plan: Plan, job: CutJob, at: number): string {
  const run = job.runs[at];
  if (run === undefined || isHose(job.article)) return "lateral";
  const block = plan.rows?.rows[run.row]?.block;
  const hung = plan.trellis?.blocks.find((each) => each.block === block)?.wires[run.wire];
  if (hung === undefined) return "wire";
  const name = `${hung.wire.purpose} wire at ${millimetres(hung.height_m)} m`;
  return hung.wire.count > 1 ? `${name}, ${run.copy + 1} of ${hung.wire.count}` : name;
}

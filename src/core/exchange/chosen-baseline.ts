import { failure, type Outcome, success } from "../outcome.ts";
import type { Plan } from "../plan.ts";
import type { LonLat } from "../plane/coordinate.ts";
import { baselineAmbiguous, baselineTooShort, baselineUnknown } from "./hand-over-findings.ts";
import type { Baseline } from "./layers/layer-job.ts";
import { placed, rowLabel } from "./positions.ts";

/** A line to measure from; shorter ones have no sure direction. */
const least_m = 1;

/**
 * The line that a text names: two marks with a comma between, from the first to the second, or a row, from its start to its end; null when
 * it names nothing. Capitals do not matter. Findings: `exchange/baseline-unknown`, `exchange/baseline-ambiguous`,
 * `exchange/baseline-too-short`.
 */
export function chosenBaseline(plan: Plan, text: string | null): Outcome<Baseline | null> {
  const said = (text ?? "").trim();
  if (said === "") return success(null);
  if (plan.ground === null) return failure([baselineUnknown(said, [])]);
  const ends = marksNamed(plan, said) ?? rowNamed(plan, said);
  if (ends === null) {
    return failure([
      baselineUnknown(
        said,
        plan.project.marks.map(({ name, key }) => name ?? key),
      ),
    ]);
  }
  if ("twice" in ends) return failure([baselineAmbiguous(said, ends.twice)]);
  const { frame } = plan.ground;
  const [from, to] = [frame.toPlane(ends.from), frame.toPlane(ends.to)];
  const length_m = Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (length_m < least_m) return failure([baselineTooShort(said, length_m, least_m)]);
  return success({ name: said, ...ends });
}

type Ends = { readonly from: LonLat; readonly to: LonLat } | { readonly twice: string };

/** Names may have commas in them: every comma is tried as the one between. */
function marksNamed({ project }: Plan, text: string): Ends | null {
  const called = (name: string) =>
    project.marks.filter((mark) => [mark.name, mark.key].some((each) => isSame(each ?? "", name)));
  const parts = text.split(",");
  for (let i = 1; i < parts.length; i++) {
    const names = [parts.slice(0, i).join(",").trim(), parts.slice(i).join(",").trim()] as const;
    const found = names.map(called);
    const [[from, alsoFrom] = [], [to, alsoTo] = []] = found;
    if (from === undefined || to === undefined) continue;
    if (alsoFrom !== undefined) return { twice: names[0] };
    if (alsoTo !== undefined) return { twice: names[1] };
    return { from: from.at, to: to.at };
  }
  return null;
}

function rowNamed(plan: Plan, text: string): Ends | null {
  const name = text.replace(/^row[\s-]+/i, "");
  const rows = plan.rows?.rows ?? [];
  const byId = rows.filter(({ id }) => isSame(id, name));
  const [row, other] = byId.length > 0 ? byId : rows.filter((each) => isSame(rowLabel(each), name));
  if (row === undefined) return null;
  return other === undefined ? { from: placed(plan, row.start), to: placed(plan, row.end) } : { twice: name };
}

function isSame(a: string, b: string): boolean {
  return a !== "" && a.toLowerCase() === b.toLowerCase();
}

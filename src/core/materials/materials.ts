import type { Drip } from "../drip/drip.ts";
import { hoseSuffix } from "../drip/hose-size.ts";
import type { WaterPart } from "../drip/watering.ts";
import { type Finding, type Phrase, quantity, say } from "../finding.ts";
import { type Outcome, success } from "../outcome.ts";
import type { Block, MaterialSettings } from "../project/project.ts";
import type { Rows } from "../rows/rows.ts";
import type { Trellis } from "../trellis/trellis.ts";
import type { Trench } from "../trench/trench.ts";
import { chosenAnswer } from "./coil-packs.ts";
import { blockCostsOf, costOf, rowCostsOf } from "./cost.ts";
import { cutFindings } from "./cutting/cut-findings.ts";
import type { CutJob } from "./cutting/cut-job.ts";
import { cutJobs } from "./cutting/cut-jobs.ts";
import type { CutPlan } from "./cutting/cut-plan.ts";
import { dripArticles, hoseJoinSpec, isHose } from "./drip-articles.ts";
import { notCovered, standingRowsCounted, stockMistold, stockNotNeeded, twoPersonPackages } from "./findings.ts";
import { lineOf } from "./line.ts";
import type { MaterialCost, MaterialLine } from "./material-line.ts";
import type { Need } from "./need.ts";
import { counted, needs } from "./needs.ts";
import { joinSpec } from "./spec.ts";

/** Sums carry rounding dust. */
const dust = 1e-6;

export interface Materials {
  /** The shopping list, in the order of the work. */
  readonly lines: readonly MaterialLine[];
  /** For each line what every row needs of it, in the order of the plan's rows; together they are what the line needs. */
  readonly rowNeeds: readonly (readonly number[])[];
  /** How coils are cut, an article each: wire in the order of the trellis, then hose; no plan while coils are only counted by length. */
  readonly coils: readonly CoilWork[];
  readonly cost: MaterialCost;
  /** In the order of the plan's rows, and of its blocks: shares of the whole cost by what each needs. */
  readonly rowCosts: readonly MaterialCost[];
  readonly blockCosts: readonly MaterialCost[];
}

/** The stage: a planner may get it late. */
export type MaterialsOf = typeof materials;

/** Works out how a job is cut; null: not now. */
export type CutOf = (job: CutJob) => CutPlan | null;

export interface CoilWork {
  readonly job: CutJob;
  readonly plan: CutPlan | null;
}

/**
 * The shopping list, the cutting plans and what they cost; without a trench nothing of the main line is on it. `cut` makes the cutting plan of an article; where it answers null, coils are
 * counted by length (quick, for while something is dragged). Findings: those of plantings and cutting plans, materials/stock-not-needed,
 * materials/stock-mistold, materials/not-covered, materials/standing-rows-counted, materials/two-person-packages.
 */
export function materials(
  rows: Rows,
  trellis: Trellis,
  drip: Drip,
  blocks: readonly Block[],
  settings: MaterialSettings,
  cut: CutOf,
  trench: Trench | null,
  water: readonly WaterPart[],
): Outcome<Materials> {
  const structure = needs(rows, trellis, drip, blocks, settings, trench, water);
  const coils = cutJobs(rows, trellis, drip, blocks, settings).map((job) => ({ job, plan: cut(job) }));
  const wanted = withJoins(structure.needs, coils, rows.rows.length, blocks);
  const lines = wanted.map((need) => {
    const work = coils.find(({ job }) => job.article === need.article);
    return lineOf(need, work?.job ?? null, work?.plan ?? null, settings);
  });
  const rowNeeds = wanted.map(({ perRow }) => perRow);
  const rowCosts = rowCostsOf(lines, rowNeeds, rows.rows.length);
  return success(
    {
      lines,
      rowNeeds,
      coils,
      cost: costOf(lines),
      rowCosts,
      blockCosts: blockCostsOf(lines, rowNeeds, rowCosts, rows, blocks),
    },
    [
      ...structure.findings,
      ...coils.flatMap(({ job, plan }) => cutFindings(job, plan, coilName(job, structure.needs))),
      ...listFindings(lines, coils, rows, settings),
    ],
  );
}

/** How a sentence calls the wire or hose of a cutting plan. */
function coilName({ article }: CutJob, structure: readonly Need[]): Phrase {
  const need = structure.find((each) => each.article === article);
  if (need === undefined || need.diameter_mm === null)
    return [article === "hose" ? "Drip hose" : `Drip hose ${article}`];
  return say`Wire of ${quantity("diameter", need.diameter_mm)}`;
}

/** The joins that the cutting plans make are bought too, those of hose by its diameters; each stands after the wire or hose it joins. */
function withJoins(
  structure: readonly Need[],
  coils: readonly CoilWork[],
  rows: number,
  blocks: readonly Block[],
): readonly Need[] {
  const joins = (isOwn: (article: string) => boolean): readonly number[] => {
    const perRow = new Array<number>(rows).fill(0);
    for (const { job, plan } of coils) {
      if (!isOwn(job.article)) continue;
      for (const { cuts } of chosenAnswer(plan)?.coils ?? []) {
        for (const { run, from_m } of cuts) {
          const row = job.runs[run]?.row;
          if (from_m > 0 && row !== undefined) perRow[row] = (perRow[row] ?? 0) + 1;
        }
      }
    }
    return perRow;
  };
  const all = [...structure];
  const after = (kind: "wire" | "hose", join: Need) => {
    if (!join.perRow.some((each) => each > 0)) return;
    all.splice(all.findLastIndex((need) => need.kind === kind || need.kind === join.kind) + 1, 0, join);
  };
  after("wire", {
    ...counted(
      "wire-join",
      joins((article) => !isHose(article)),
    ),
    spec: joinSpec(blocks),
  });
  const articles = dripArticles(blocks);
  for (const suffix of new Set(blocks.map(({ drip }) => hoseSuffix(drip)))) {
    const own = blocks.filter(({ drip }) => hoseSuffix(drip) === suffix);
    const hoses = new Set(own.map(({ id }) => articles.get(id)?.hose));
    const [first] = own;
    if (first === undefined) continue;
    after("hose", {
      ...counted(
        "hose-join",
        joins((article) => hoses.has(article)),
      ),
      article: `hose-join${suffix}`,
      spec: hoseJoinSpec(first.drip),
    });
  }
  return all;
}

function listFindings(
  lines: readonly MaterialLine[],
  coils: readonly CoilWork[],
  rows: Rows,
  { onHand }: MaterialSettings,
): readonly Finding[] {
  if (lines.length === 0) return [];
  const standing = rows.rows.filter(({ given }) => given !== null).length;
  const unknown = onHand.filter(({ article }) => !lines.some((line) => line.article === article));
  const mistold = onHand.filter(({ article, pieces, coils_m }) => {
    const unit = lines.find((line) => line.article === article)?.unit;
    return (unit === "m" && pieces > 0) || (unit === "pieces" && coils_m.length > 0);
  });
  // What a cutting plan cannot cut is told with it.
  const short = lines.filter(({ article, quantity: wanted, onHand: there, packs }) => {
    const held = packs.reduce((sum, { size, count }) => sum + size * count, 0);
    return there + held < wanted - dust && !coils.some(({ job }) => job.article === article);
  });
  const heavy = lines.filter(({ isTwoPersonLift }) => isTwoPersonLift);
  return [
    ...(unknown.length > 0 ? [stockNotNeeded(unknown.map(({ article }) => article))] : []),
    ...(mistold.length > 0 ? [stockMistold(mistold.map(({ article }) => article))] : []),
    ...(short.length > 0 ? [notCovered(short.map(({ item }) => item))] : []),
    ...(standing > 0 ? [standingRowsCounted(standing)] : []),
    ...(heavy.length > 0 ? [twoPersonPackages(heavy.map(({ item }) => item))] : []),
  ];
}

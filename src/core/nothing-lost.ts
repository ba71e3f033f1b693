import { legLengths_m } from "./mainline/route.ts";
import type { CutJob } from "./materials/cutting/cut-job.ts";
import type { CutAnswer, CutPlan } from "./materials/cutting/cut-plan.ts";
import type { MaterialLine } from "./materials/material-line.ts";
import type { Plan } from "./plan.ts";

/** Of a sum over many rows, what rounding may leave. */
const rounding_ratio = 1e-9;

/**
 * Sentences about what of a plan's structure gets lost on the way to the list, or comes from nowhere: wire in all against the runs of the
 * rows, pipes that the watering chose against those of the trench, the list against the trench, the water's parts, the hose and emitters of the
 * rows and the needs of the rows, every run against its cuts, every coil against its cuts and its rest, coils bought against the packages of the
 * list.
 */
export function nothingLost(plan: Plan): readonly string[] {
  const broken = [...wireLost(plan), ...pipesLost(plan)];
  const { materials, trench, watering } = plan;
  if (materials === null) return broken;
  for (const [where, parts] of [
    ["in the trench", trench?.parts ?? []],
    ["for the water", watering?.watering?.parts ?? []],
  ] as const) {
    for (const { article, quantity } of parts) {
      const listed = materials.lines.find((line) => line.article === article)?.needed ?? 0;
      if (!isSame(listed, quantity)) broken.push(`${article}: ${quantity} ${where}, ${listed} on the list`);
    }
  }
  broken.push(...dripLost(plan, materials.lines));
  materials.lines.forEach(({ article, needed }, line) => {
    const sum = (materials.rowNeeds[line] ?? []).reduce((total, each) => total + each, 0);
    if (!isSame(sum, needed)) broken.push(`${article}: ${needed} on the list, ${sum} in the rows`);
  });
  for (const { job, plan: cut } of materials.coils) {
    if (cut === null) continue;
    for (const answer of [cut.noJoins, cut.fewestCoils]) {
      if (answer !== null) broken.push(...coilsBroken(job, answer), ...runsBroken(job, answer, cut));
    }
    const line = materials.lines.find(({ article }) => article === job.article);
    const chosen = cut.chosen === null ? null : cut[cut.chosen];
    if (line !== undefined && chosen !== null) broken.push(...packsBroken(line, chosen));
  }
  return broken;
}

function wireLost({ rows, trellis }: Plan): readonly string[] {
  if (rows === null || trellis === null) return [];
  const wiresOf = new Map(trellis.blocks.map(({ block, wires }) => [block, wires]));
  return trellis.wires.flatMap(({ article, length_m }) => {
    let sum_m = 0;
    rows.rows.forEach(({ block }, row) => {
      trellis.rows[row]?.runs.forEach((run, w) => {
        if (wiresOf.get(block)?.[w]?.article === article) sum_m += run.count * run.length_m;
      });
    });
    return isSame(sum_m, length_m) ? [] : [`${article}: ${length_m} m in all, ${sum_m} m in the rows`];
  });
}

/** Every leg that the watering put a pipe on has that pipe in the trench, as long as its stations are apart. */
function pipesLost({ watering, trench, mainline }: Plan): readonly string[] {
  const chosen = watering?.watering?.pipes ?? [];
  const route = mainline?.route ?? null;
  if (chosen.length === 0 || trench === null || route === null) return [];
  const legs_m = legLengths_m(route);
  const lines = new Set(chosen.map(({ line, pipe }) => `line ${line} of ${pipe.size}`));
  return [...lines].flatMap((name) => {
    const wanted_m = chosen
      .filter(({ line, pipe }) => `line ${line} of ${pipe.size}` === name)
      .reduce((sum_m, { points }) => points.reduce((own_m, point) => own_m + Number(legs_m[point]), sum_m), 0);
    const laid_m = trench.pipes
      .filter(({ line, pipe }) => `line ${line} of ${pipe.size}` === name)
      .reduce((sum_m, { spans }) => spans.reduce((own_m, { from_m, to_m }) => own_m + to_m - from_m, sum_m), 0);
    // What no set needs goes on with the pipe before it.
    return laid_m >= wanted_m - rounding_ratio * Math.max(1, wanted_m)
      ? []
      : [`${name}: ${wanted_m} m chosen, ${laid_m} m in the trench`];
  });
}

/** Hose and emitters of the rows are on the list, emitters that are built into their hose with it. */
function dripLost({ drip, rows, project }: Plan, lines: readonly MaterialLine[]): readonly string[] {
  if (drip === null || rows === null) return [];
  const listed = (kind: MaterialLine["kind"]) =>
    lines.reduce((sum, line) => (line.kind === kind ? sum + line.needed : sum), 0);
  const punched = drip.rows.reduce((sum, { emitters }, row) => {
    const block = project.blocks.find(({ id }) => id === rows.rows[row]?.block);
    return block?.drip.emitterPlacing === "on-line" ? sum + emitters : sum;
  }, 0);
  return [
    ...(isSame(listed("hose"), drip.lateral_m)
      ? []
      : [`hose: ${drip.lateral_m} m in the rows, ${listed("hose")} on the list`]),
    ...(isSame(listed("emitter"), punched)
      ? []
      : [`emitters: ${punched} in the rows, ${listed("emitter")} on the list`]),
  ];
}

/** What is cut from a coil and what is left make the coil; coils on hand are there, each once; the others are bought. */
function coilsBroken({ article, onHand_m }: CutJob, { coils, bought, boughtCount, bought_m }: CutAnswer) {
  const broken: string[] = [];
  const there_m = [...onHand_m];
  let fresh = 0;
  let fresh_m = 0;
  for (const { isOnHand, length_m, cuts, left_m } of coils) {
    const taken_m = cuts.reduce((sum_m, cut) => sum_m + cut.taken_m, 0);
    if (!isSame(taken_m + left_m, length_m))
      broken.push(`${article}: ${taken_m} m cut and ${left_m} m left of a coil of ${length_m} m`);
    if (isOnHand) {
      const at = there_m.indexOf(length_m);
      if (at < 0) broken.push(`${article}: a coil of ${length_m} m is not on hand`);
      else there_m.splice(at, 1);
    } else {
      fresh++;
      fresh_m += length_m;
    }
  }
  const listed = bought.reduce((sum, { count }) => sum + count, 0);
  if (fresh !== boughtCount || listed !== boughtCount || !isSame(fresh_m, bought_m))
    broken.push(`${article}: ${fresh} coils are cut that are bought, ${boughtCount} and ${listed} are told`);
  return broken;
}

/** Every run is cut whole, once, from its start to its end. */
function runsBroken({ article, runs }: CutJob, { coils }: CutAnswer, { uncut }: CutPlan): readonly string[] {
  const pieces = runs.map((): (readonly [from_m: number, to_m: number])[] => []);
  for (const { cuts } of coils) for (const { run, from_m, to_m } of cuts) pieces[run]?.push([from_m, to_m]);
  const given = new Set(uncut);
  return runs.flatMap(({ length_m }, run) => {
    if (given.has(run)) return [];
    let at_m = 0;
    for (const [from_m, to_m] of (pieces[run] ?? []).toSorted(([a_m], [b_m]) => a_m - b_m))
      at_m = isSame(from_m, at_m) ? to_m : Number.NaN;
    return isSame(at_m, length_m) ? [] : [`${article}: run ${run} of ${length_m} m is not cut whole and once`];
  });
}

function packsBroken({ article, packs }: MaterialLine, { bought_m }: CutAnswer): readonly string[] {
  const listed_m = packs.reduce((sum_m, { size, count }) => sum_m + size * count, 0);
  return isSame(listed_m, bought_m) ? [] : [`${article}: ${listed_m} m on the list, ${bought_m} m for cutting`];
}

function isSame(a: number, b: number): boolean {
  return Math.abs(a - b) <= rounding_ratio * Math.max(1, Math.abs(a), Math.abs(b));
}

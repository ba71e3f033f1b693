import type { Finding } from "../finding.ts";
import { heightReader } from "../ground/elevation.ts";
import { failure, type Outcome, success } from "../outcome.ts";
import type { Plan } from "../plan.ts";
import type { CoordinateSystem } from "../systems/coordinate-system.ts";
import { datumNote } from "../systems/datum-note.ts";
import { type DocumentKind, documentKinds, type HandOverChoice } from "./choice.ts";
import { choiceFindings } from "./choice-findings.ts";
import { chosenBaseline } from "./chosen-baseline.ts";
import { chosenRows } from "./chosen-rows.ts";
import { chosenSystem } from "./chosen-system.ts";
import type { Format, OutFile } from "./format.ts";
import { formats } from "./formats.ts";
import { heightsMissing, namesChanged, namesTooShort, noSuchFormat } from "./hand-over-findings.ts";
import { type Layer, type LayerKind, layerKinds } from "./layers/layer.ts";
import { type LayerJob, rowsOut } from "./layers/layer-job.ts";
import { layerOf } from "./layers/layers.ts";
import { type List, type ListKind, listKinds } from "./lists/list.ts";
import { listOf } from "./lists/lists.ts";
import { type Names, type Naming, namingOf } from "./naming.ts";
import { nothingFindings } from "./nothing-findings.ts";

/** Files that are ready to be written, and what there is to say about them. */
export interface HandOver {
  readonly files: readonly OutFile[];
  readonly findings: readonly Finding[];
  /** What is in them, for who wants to see it before it is written. */
  readonly layers: readonly Layer[];
  readonly lists: readonly List[];
  readonly names: Names;
  readonly system: CoordinateSystem;
}

/**
 * The files of a plan by a choice. Nothing is written yet: contents are made piece by piece as they are asked for.
 * `writtenAt` is the moment that goes into files that state one (ISO 8601). Findings: those of hand-over-findings.ts, of the systems and of
 * the format.
 */
export function handOver(plan: Plan, choice: HandOverChoice, writtenAt: string): Outcome<HandOver> {
  const work = handingOver(plan, choice, writtenAt);
  for (;;) {
    const step = work.next();
    if (step.done === true) return step.value;
  }
}

/** The same as `handOver`, step by step, a few milliseconds each: names of a quarter of a million points are made up before the first is written. */
export function* handingOver(
  plan: Plan,
  choice: HandOverChoice,
  writtenAt: string,
): Generator<undefined, Outcome<HandOver>> {
  const format = formats.find(({ name }) => name === choice.as);
  if (format === undefined)
    return failure([
      noSuchFormat(
        choice.as,
        formats.map(({ name }) => name),
      ),
    ]);
  const about = choiceFindings(choice, format);
  const system = chosenSystem(plan, choice, format);
  const rows = chosenRows(plan, choice.rows);
  const baseline = chosenBaseline(plan, choice.baseline);
  const said = [...about, ...system.findings, ...rows.findings, ...baseline.findings];
  const isRefused = about.some(({ severity }) => severity === "error");
  if (isRefused || !system.ok || !rows.ok || !baseline.ok) return failure(said);
  const heightAt = heightAtOf(plan, choice.heights);
  const job: LayerJob = {
    plan,
    rows: rows.value,
    pegBeyond_m: choice.pegBeyond_m,
    baseline: baseline.value,
    hasHeights: choice.heights,
    heightAt,
  };
  const fits = [...new Set(choice.of)].filter((thing) => format.holds.includes(thing));
  const layers = fits.flatMap((thing) => (isLayer(thing) ? [layerOf[thing](job)] : []));
  const lists = fits.flatMap((thing) => (isList(thing) ? [listOf[thing](plan)] : []));
  const naming = namingFor(plan, choice, format);
  const count = layers.reduce((sum, layer) => sum + layer.count, 0);
  const least = String(count).length + 2;
  if (naming.longest !== null && naming.longest < least) {
    return failure([...said, namesTooShort(naming.longest, count, least)]);
  }
  const names = yield* namingOf(layers, naming);
  yield undefined;
  const { files, findings } = format.write({
    plan,
    choice,
    layers,
    lists,
    documents: fits.filter(isDocument),
    names,
    system: system.value,
    writtenAt,
  });
  return success({
    files,
    findings: [
      ...said,
      ...nothingFindings(plan, rows.value !== null, layers, lists),
      ...(layers.length > 0 ? datumNote(system.value) : []),
      ...missingHeights(job, choice, format),
      ...(names.changed.length > 0 ? [namesChanged(names.changed, naming)] : []),
      ...findings,
    ],
    layers,
    lists,
    names,
    system: system.value,
  });
}

function namingFor({ project }: Plan, choice: HandOverChoice, format: Format): Naming {
  const usual = project.blocks.length < 2 ? format.naming.one : format.naming.several;
  return {
    pattern: choice.naming ?? usual,
    longest: choice.nameLength ?? format.nameLength,
    letters: format.letters,
  };
}

function heightAtOf({ ground }: Plan, isWished: boolean): LayerJob["heightAt"] {
  if (!isWished || ground === null || ground.elevation.kind === "flat") return () => null;
  return heightReader(ground.elevation);
}

/** Told by the ends of rows: where those are known, what stands between them is. */
function missingHeights(job: LayerJob, { heights }: HandOverChoice, { choices }: Format): readonly Finding[] {
  const { ground } = job.plan;
  if (!heights || !choices.includes("heights") || ground === null || ground.elevation.kind === "flat") return [];
  const ends = rowsOut(job).flatMap(([, { start, end }]) => [start, end]);
  const missing = ends.filter(([x, y]) => job.heightAt(x, y) === null).length;
  return missing === 0 ? [] : [heightsMissing(missing, ends.length)];
}

function isLayer(thing: string): thing is LayerKind {
  return layerKinds.some((kind) => kind === thing);
}

function isList(thing: string): thing is ListKind {
  return listKinds.some((kind) => kind === thing);
}

function isDocument(thing: string): thing is DocumentKind {
  return documentKinds.some((kind) => kind === thing);
}

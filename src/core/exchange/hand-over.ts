import type { Finding } from "../finding.ts";
import { heightReader } from "../ground/elevation.ts";
import { failure, type Outcome, success } from "../outcome.ts";
import type { Plan } from "../plan.ts";
import { type CoordinateSystem, lonLatSystem, statedSystem } from "../systems/coordinate-system.ts";
import { localSystem } from "../systems/local-system.ts";
import { type DocumentKind, documentKinds, type HandOverChoice } from "./choice.ts";
import type { OutFile } from "./format.ts";
import { formatNamed } from "./formats.ts";
import { type Layer, type LayerKind, layerKinds } from "./layers/layer.ts";
import type { LayerJob } from "./layers/layer-job.ts";
import { layerOf } from "./layers/layers.ts";
import { type List, type ListKind, listKinds } from "./lists/list.ts";
import { listOf } from "./lists/lists.ts";
import { type Names, namesOf } from "./naming.ts";

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
 * `writtenAt` is the moment that goes into files that state one (ISO 8601).
 */
export function handOver(plan: Plan, choice: HandOverChoice, writtenAt: string): Outcome<HandOver> {
  const format = formatNamed(choice.as);
  const system = systemFor(plan, choice);
  if (!system.ok) return failure(system.findings);
  const layerJob: LayerJob = {
    plan,
    rows: null,
    pegBeyond_m: choice.pegBeyond_m,
    baseline: null,
    heightAt: heightAtOf(plan, choice.heights),
  };
  const fits = choice.of.filter((thing) => format.holds.includes(thing));
  const layers = fits.flatMap((thing) => (isLayer(thing) ? [layerOf[thing](layerJob)] : []));
  const isOneBlock = plan.project.blocks.length < 2;
  const names = namesOf(layers, {
    pattern: choice.naming ?? (isOneBlock ? format.naming.one : format.naming.several),
    longest: choice.nameLength ?? format.nameLength,
    letters: format.letters,
  });
  const lists = fits.flatMap((thing) => (isList(thing) ? [listOf[thing](plan)] : []));
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
  return success({ files, findings: [...system.findings, ...findings], layers, lists, names, system: system.value });
}

function systemFor(plan: Plan, { system, unit }: HandOverChoice): Outcome<CoordinateSystem> {
  if (system === null) return success(lonLatSystem);
  if (system === "local" && plan.ground !== null) return success(localSystem(plan.ground.frame, unit));
  return statedSystem(system);
}

function heightAtOf({ ground }: Plan, isWished: boolean): LayerJob["heightAt"] {
  if (!isWished || ground === null || ground.elevation.kind === "flat") return () => null;
  return heightReader(ground.elevation);
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

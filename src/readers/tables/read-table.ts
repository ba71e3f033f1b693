import type { Finding } from "../../core/finding.ts";
import { failure, type Outcome, success } from "../../core/outcome.ts";
import { brokenFile } from "../file-findings.ts";
import { stopped } from "../findings.ts";
import type { FoundFeature, Question, ReadingAnswers, ReadingFollowed } from "../reading.ts";
import { type FileTable, mostCells, mostLines } from "./table.ts";
import { tableFeatures } from "./table-features.ts";
import {
  columnsWithoutPlace,
  decimalCommas,
  decimalsDoubtful,
  linesBeforeHeads,
  linesWithoutPlace,
  tableName,
  tooManyLines,
} from "./table-findings.ts";
import { layoutOf } from "./table-layout.ts";
import { tableNumbers } from "./table-numbers.ts";
import { tableSystem } from "./table-system.ts";

/** What came of one table. */
export interface ReadTable {
  readonly system: string;
  readonly features: readonly FoundFeature[];
  readonly questions: readonly Question[];
}

/**
 * What a table holds, gone through twice: once for what its numbers are like, once for the features. Findings: `readers/columns-without-place`,
 * `readers/decimals-doubtful`, `readers/decimal-commas`, `readers/lines-without-place`, `readers/lines-before-heads`, `readers/too-many-lines`,
 * `readers/broken-file`, `readers/units-disagree`, `readers/stopped`, and those of a system that is stated.
 */
export async function readTable(
  table: FileTable,
  file: { readonly name: string; readonly title: string },
  answers: ReadingAnswers,
  { progress, signal }: ReadingFollowed,
): Promise<Outcome<ReadTable>> {
  const called = tableName(file.name, table.layer);
  const layout = layoutOf(table);
  if ("first" in layout) {
    const broken = layout.first.length === 0 ? firstBreak(table) : null;
    return failure([
      broken === null ? columnsWithoutPlace(called, layout.first) : brokenFile(file.name, file.title, broken),
    ]);
  }
  const counting = tableNumbers(table, layout);
  let counted = counting.next();
  while (counted.done !== true) {
    await breath();
    if (signal?.aborted === true) return failure([stopped(file.name)]);
    counted = counting.next();
  }
  const numbers = counted.value;
  if (numbers.broken !== null) return failure([brokenFile(file.name, file.title, numbers.broken)]);
  if (numbers.lines > mostLines) return failure([tooManyLines(called, mostLines, "lines")]);
  if (numbers.cells > mostCells) return failure([tooManyLines(called, mostCells, "cells")]);
  if (numbers.mark === null) return failure([decimalsDoubtful(called, numbers.example)]);
  const taken = tableSystem(layout, numbers, answers);
  if (!taken.ok) return taken;
  const { system, isSwapped, height_m, questions } = taken.value;
  const said: readonly Finding[] = [
    ...taken.findings,
    ...(layout.above > 0 ? [linesBeforeHeads(called, layout.above)] : []),
    ...(numbers.mark === "," ? [decimalCommas(called)] : []),
  ];
  if (system === null || questions.length > 0) {
    return success({ system: system?.name ?? "not known yet", features: [], questions }, said);
  }
  const making = tableFeatures(table, layout, { system, mark: numbers.mark, isSwapped, height_m });
  let made = making.next();
  while (made.done !== true) {
    progress?.(made.value / numbers.lines);
    await breath();
    if (signal?.aborted === true) return failure([stopped(file.name)]);
    made = making.next();
  }
  const { features, left, why } = made.value;
  const findings = [...said, ...(left > 0 ? [linesWithoutPlace(called, left, why)] : [])];
  return success({ system: system.name, features, questions }, findings);
}

/** Why a table breaks off before its first line; null when it does not. */
function firstBreak(table: FileTable): string | null {
  for (const line of table.lines()) return typeof line === "string" ? line : null;
  return null;
}

/** Lets whoever waits, such as the one who stops the reading, have a turn. */
function breath(): Promise<void> {
  return new Promise((done) => setTimeout(done, 0));
}

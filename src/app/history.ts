import type { Project } from "../core/project/project.ts";

/** One edit: what it was, for people, and the project after it. */
export interface Step {
  readonly name: string;
  readonly project: Project;
  /** Edits one after another with the same mark are one step: the letters of one typed value, the moves of one key held down. */
  readonly joins: string | null;
}

/** Every project since the start, sharing all that did not change, and the one that is shown. The first step is the start itself. */
export interface History {
  readonly steps: readonly [Step, ...Step[]];
  readonly at: number;
}

/** Steps that are kept; older ones fall off the far end. */
const mostSteps = 1000;

/** A history with nothing to undo. */
export function begin(project: Project): History {
  return { steps: [{ name: "Start", project, joins: null }], at: 0 };
}

/** The step that is shown. */
export function current({ steps, at }: History): Step {
  return steps[at] ?? steps[0];
}

/** The history with one more step; what had been undone is gone. The same history when the project is the same. */
export function withStep(history: History, step: Step): History {
  const shown = current(history);
  if (step.project === shown.project) return history;
  const joined = step.joins !== null && step.joins === shown.joins && history.at > 0;
  const [first, ...rest] = history.steps;
  const kept = [...rest.slice(0, joined ? history.at - 1 : history.at), step];
  const fallen = kept.length - mostSteps;
  if (fallen <= 0) return { steps: [first, ...kept], at: kept.length };
  const start = kept[fallen - 1] ?? first;
  return { steps: [{ ...start, name: first.name, joins: null }, ...kept.slice(fallen)], at: mostSteps };
}

/** One step back; the same history at the start. */
export function undone(history: History): History {
  return history.at === 0 ? history : { ...history, at: history.at - 1 };
}

/** One step forward; the same history at the end. */
export function redone(history: History): History {
  return history.at === history.steps.length - 1 ? history : { ...history, at: history.at + 1 };
}

/** What undo would take back and redo would bring again, in words; null when there is nothing. */
export function nextSteps({ steps, at }: History): { readonly undo: string | null; readonly redo: string | null } {
  return { undo: at === 0 ? null : (steps[at]?.name ?? null), redo: steps[at + 1]?.name ?? null };
}

import type { Project } from "../../core/project/project.ts";
import { serializeProject } from "../../core/project/serialize.ts";
import { failureOf, type KeepingFailure } from "./failure.ts";
import { formatVersionOf } from "./project-texts.ts";
import type { ProjectRecord } from "./records.ts";
import { type Clock, createSaveSchedule } from "./save-schedule.ts";
import type { Shelf } from "./shelf.ts";
import { thinRevisions } from "./thin-revisions.ts";

export type SessionStatus =
  /** Nothing of one's own is in it yet: a sample, an empty map. */
  | { readonly kind: "untouched" }
  | { readonly kind: "keeping" }
  | { readonly kind: "kept" }
  | { readonly kind: "not-kept"; readonly failure: KeepingFailure };

export interface SessionParts {
  readonly shelf: Shelf;
  readonly clock: Clock;
  /** As it was begun with. */
  readonly project: Project;
  /** What is kept of it; null when nothing is. */
  readonly record: ProjectRecord | null;
  /** Whether there is anything to keep before the next change. */
  readonly isUnkept: boolean;
  readonly newId: () => string;
  readonly thumbnailOf: (project: Project) => string;
  /** True when this tab has its lock. */
  readonly isSoleWriter: () => boolean;
  /** Called when the status may be another; not for the first. */
  readonly onStatus: (status: SessionStatus) => void;
  readonly onWritten: (record: ProjectRecord, isFirst: boolean) => void;
  /** Another page wrote the project meanwhile: what is here goes on as a project of its own, and the answer is how it is named. */
  readonly asCopy: (project: Project) => Promise<Project>;
}

/** Keeps one open project: takes its newest state again and again and sees that it gets onto the shelf. */
export interface Session {
  /** Null until it has been kept for the first time. */
  readonly record: () => ProjectRecord | null;
  readonly project: () => Project;
  readonly status: () => SessionStatus;
  take(project: Project): void;
  /** Keeps now what is not kept yet; true when all is kept, or there is nothing to keep. */
  flush(): Promise<boolean>;
  /** No more tries; what is not kept stays in memory. */
  stop(): void;
}

const retries_ms = [2000, 5000, 15_000, 30_000];

export function createSession(parts: SessionParts): Session {
  const { shelf, clock, onStatus } = parts;
  let record = parts.record;
  let newest = parts.project;
  let kept: Project | null = parts.isUnkept ? null : parts.project;
  let failure: KeepingFailure | null = null;
  let failures = 0;
  let cancelRetry: (() => void) | null = null;

  const status = (): SessionStatus => {
    if (failure) return { kind: "not-kept", failure };
    if (newest !== kept) return { kind: "keeping" };
    return record ? { kind: "kept" } : { kind: "untouched" };
  };

  const attempt = async (): Promise<void> => {
    const project = newest;
    const text = serializeProject(project);
    let outcome = await write(project, text, record?.revisions ?? []);
    if (outcome === "full") outcome = await write(project, text, record?.revisions ?? [], 1);
    if (outcome !== "conflict") {
      kept = project;
      return;
    }
    // Under an id of its own it can meet nobody's.
    const copy = await parts.asCopy(project);
    record = null;
    if (newest === project) newest = copy;
    await write(copy, serializeProject(copy), []);
    kept = copy;
  };

  /** Writes the next revision; "full" when there was no room but older texts may be given up for it. */
  const write = async (
    project: Project,
    text: string,
    before: ProjectRecord["revisions"],
    most = Number.POSITIVE_INFINITY,
  ): Promise<"written" | "conflict" | "full"> => {
    const at = clock.now();
    const revision = (record?.revision ?? 0) + 1;
    const staying = thinRevisions([...before, { revision, at }]).slice(-1 - most);
    const next: ProjectRecord = {
      id: record?.id ?? parts.newId(),
      name: project.name,
      changed: at,
      thumbnail: parts.thumbnailOf(project),
      revision,
      revisions: staying,
      deleted: null,
      formatVersion: formatVersionOf(project),
    };
    const dropped = before.filter((each) => !staying.includes(each)).map((each) => each.revision);
    const base = record?.revision ?? null;
    const isSoleWriter = record === null || parts.isSoleWriter();
    try {
      const outcome = await shelf.write({ record: next, text, base, dropped, isSoleWriter });
      if (outcome === "conflict") return outcome;
    } catch (error) {
      const mayGiveUp = failureOf(error).code === "full" && most > 1 && before.length > 1;
      if (mayGiveUp) return "full";
      throw error;
    }
    const isFirst = record === null;
    record = next;
    parts.onWritten(next, isFirst);
    return "written";
  };

  const save = async (): Promise<void> => {
    cancelRetry?.();
    cancelRetry = null;
    try {
      if (newest !== kept) await attempt();
      failure = null;
      failures = 0;
    } catch (error) {
      failure = failureOf(error);
      cancelRetry = clock.later(schedule.changed, retries_ms[Math.min(failures++, retries_ms.length - 1)] ?? 0);
    }
    onStatus(status());
  };
  const schedule = createSaveSchedule(clock, save);

  if (newest !== kept) schedule.changed();
  return {
    record: () => record,
    project: () => newest,
    status,
    take: (project) => {
      if (project === newest) return;
      newest = project;
      if (newest !== kept || failure || schedule.isBusy()) schedule.changed();
      onStatus(status());
    },
    flush: async () => {
      if (newest !== kept) schedule.changed();
      await schedule.flush();
      return newest === kept;
    },
    stop: () => {
      cancelRetry?.();
      schedule.stop();
    },
  };
}

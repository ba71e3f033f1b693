import { batch, effect, untracked } from "@preact/signals";
import type { Plan } from "../../core/plan.ts";
import type { Project } from "../../core/project/project.ts";
import { thumbnail } from "../../core/sheets/thumbnail.ts";
import { beginProject } from "../commands/begin-project.ts";
import { edit } from "../commands/edit.ts";
import { begin, current, type History } from "../history.ts";
import type { Store } from "../store.ts";
import { copyName } from "./copy-name.ts";
import type { Opened } from "./opened.ts";
import { renamed } from "./project-texts.ts";
import { readKept } from "./read-kept.ts";
import type { FileLink, ProjectRecord } from "./records.ts";
import { machineClock } from "./save-schedule.ts";
import { createSession } from "./session.ts";
import type { Shelf } from "./shelf.ts";
import { type Turns, takeTurns } from "./turns.ts";

export interface OpenProjectKeeping extends Turns {
  /** Keeps all that is not kept. */
  flush(): Promise<void>;
  /** Takes the right to write a project; false when another tab has it. */
  hold(id: string): Promise<boolean>;
  /** Gives that right back, unless the project is on the page. */
  letGo(id: string): void;
  readonly link: () => FileLink | null;
  setLink(link: FileLink): Promise<void>;
  /** Puts a project on the page again that was left before it could be kept. */
  backTo(name: string): void;
  /** True when something is not kept, and could not be. */
  readonly isAtRisk: () => boolean;
}

interface Parts {
  readonly shelf: Shelf;
  readonly refreshList: () => Promise<void>;
  /** Called after everything that was kept. */
  readonly onKept: () => void;
}

/** Follows what is on the page and keeps it. */
export function keepOpenProject(store: Store, { shelf, refreshList, onKept }: Parts): OpenProjectKeeping {
  const { keeping } = store;
  const left: Opened[] = [];
  let opened: Opened | null = null;
  let seen = 0;

  const beginSession = (project: Project): Opened => {
    const source = keeping.source.peek();
    const made: Opened = {
      link: source.kind === "fresh" ? null : source.link,
      session: createSession({
        shelf,
        clock: machineClock,
        project,
        record: source.kind === "kept" || source.kind === "left" ? source.record : null,
        isUnkept: source.kind === "own" || source.kind === "left",
        newId: () => crypto.randomUUID(),
        thumbnailOf: (kept) => thumbnail(planOf(kept)),
        isSoleWriter: () => turns.lockOf(made.session.record()?.id ?? "")?.isHeld() ?? false,
        onStatus: (status) => {
          if (opened === made) keeping.status.value = status;
        },
        onWritten: (record, isFirst) => afterWriting(made, record, isFirst),
        asCopy: (copied) => nameCopy(made, copied),
      }),
    };
    return made;
  };

  const planOf = (project: Project): Plan => {
    const shown = store.plan.peek();
    return shown?.project === project ? shown : store.planner.plan(project);
  };

  const afterWriting = (made: Opened, record: ProjectRecord, isFirst: boolean): void => {
    if (isFirst) {
      // Nobody else knows the id yet, so the lock is free.
      void turns.lockOf(record.id)?.hold();
      if (made.link) void shelf.writeLink(record.id, made.link).catch(() => undefined);
    }
    onKept();
    if (opened === made) keeping.id.value = record.id;
    turns.tell({ kind: "kept", id: record.id, revision: record.revision });
    // Not read anew: that would stand in the way of the next writing.
    const others = keeping.list.peek()?.filter(({ id }) => id !== record.id);
    if (others) keeping.list.value = [record, ...others];
  };

  /** What is on the page goes on under another name, because another page wrote the project too. */
  const nameCopy = async (made: Opened, project: Project): Promise<Project> => {
    const name = copyName(
      project.name,
      (await shelf.list()).map((each) => each.name),
    );
    // The file belongs to the project that stays behind.
    made.link = null;
    const told = `Another tab changed “${project.name}” as well. Nothing was written over: what you did here is kept as “${name}”.`;
    keeping.message.value = { text: told, actions: [] };
    if (opened !== made) return renamed(project, name);
    edit(store, { name: `Go on as “${name}”` }, (newest) => ({ ok: true, value: renamed(newest, name), findings: [] }));
    keeping.fileName.value = null;
    return currentProject(store) ?? project;
  };

  /** What is left behind is kept before it is forgotten. */
  const leave = async (gone: Opened): Promise<void> => {
    const isKept = await gone.session.flush();
    if (opened === gone) return;
    const at = left.indexOf(gone);
    if (isKept) {
      gone.session.stop();
      const id = gone.session.record()?.id;
      if (id !== undefined && opened?.session.record()?.id !== id) turns.lockOf(id)?.release();
      if (at >= 0) left.splice(at, 1);
    } else if (at < 0) left.push(gone);
    keeping.left.value = left.map(({ session }) => session.project().name);
  };

  /** Keeps what has just been put on the page in place of what was there. */
  const changeOver = (history: History | null): void => {
    const gone = opened;
    opened = history && beginSession(history.steps[0].project);
    // What was done before this module was there.
    if (history) opened?.session.take(current(history).project);
    const id = opened?.session.record()?.id ?? null;
    const lock = id === null ? null : turns.lockOf(id);
    batch(() => {
      keeping.status.value = opened?.session.status() ?? { kind: "untouched" };
      keeping.id.value = id;
      keeping.fileName.value = opened?.link?.handle.name ?? null;
      keeping.isTakingOver.value = false;
      keeping.isReading.value = lock !== null && !lock.isHeld();
    });
    if (gone) void leave(gone);
    turns.waitForTurn();
  };

  const showNewest = async (): Promise<void> => {
    const record = opened?.session.record();
    if (!record) return;
    const found = await readKept(shelf, record.id).catch(() => null);
    const gone = opened;
    if (found?.kind !== "read" || gone?.session.record() !== record || found.record.revision <= record.revision) return;
    gone.session.stop();
    batch(() => {
      keeping.source.value = { kind: "kept", record: found.record, link: gone.link };
      opened = beginSession(found.project);
      keeping.status.value = opened.session.status();
      store.draft.value = null;
      store.history.value = begin(found.project);
      const { blocks } = found.project;
      if (!blocks.some(({ id }) => id === store.blockId.peek())) store.blockId.value = blocks[0]?.id ?? null;
    });
  };

  const turns = takeTurns(store, { onPage: () => opened, showNewest, refreshList });

  effect(() => {
    const history = store.history.value;
    const count = store.opened.value;
    untracked(() => {
      if (count !== seen) {
        seen = count;
        changeOver(history);
      } else if (history && !keeping.isReading.peek()) opened?.session.take(current(history).project);
    });
  });

  return {
    ...turns,
    flush: async () => {
      const all = [...(opened ? [opened] : []), ...left];
      await Promise.all(all.map(({ session }) => session.flush()));
      for (const each of [...left]) await leave(each);
    },
    hold: (id) => turns.lockOf(id)?.hold() ?? Promise.resolve(true),
    letGo: (id) => {
      if (opened?.session.record()?.id !== id) turns.lockOf(id)?.release();
    },
    link: () => opened?.link ?? null,
    setLink: async (link) => {
      if (!opened) return;
      opened.link = link;
      keeping.fileName.value = link.handle.name;
      const id = opened.session.record()?.id;
      // Without it the file is asked for again after the next reload; the file itself is written.
      if (id !== undefined) await shelf.writeLink(id, link).catch(() => undefined);
    },
    backTo: (name) => {
      const found = left.find(({ session }) => session.project().name === name);
      if (!found) return;
      left.splice(left.indexOf(found), 1);
      found.session.stop();
      beginProject(store, found.session.project(), { kind: "left", record: found.session.record(), link: found.link });
      keeping.left.value = left.map(({ session }) => session.project().name);
    },
    isAtRisk: () => left.length > 0 || opened?.session.status().kind === "not-kept",
  };
}

function currentProject(store: Store): Project | null {
  const history = store.history.peek();
  return history && current(history).project;
}

import { parseProject } from "../../core/project/parse.ts";
import { serializeProject } from "../../core/project/serialize.ts";
import { beginProject, closeProject } from "../commands/begin-project.ts";
import { renameProject } from "../commands/rename-project.ts";
import type { Store } from "../store.ts";
import { copyName } from "./copy-name.ts";
import { failureOf } from "./failure.ts";
import type { Keeper, Message } from "./keeping-state.ts";
import { renamed } from "./project-texts.ts";
import { readKept } from "./read-kept.ts";
import type { ProjectRecord } from "./records.ts";
import type { Shelf } from "./shelf.ts";
import { thinRevisions } from "./thin-revisions.ts";

type ListActions = Pick<
  Keeper,
  "open" | "openEarlier" | "rename" | "duplicate" | "remove" | "bringBack" | "empty" | "refresh"
>;

interface Parts {
  readonly shelf: Shelf;
  /** Takes the right to write a project; false when another tab has it. */
  readonly hold: (id: string) => Promise<boolean>;
  readonly letGo: (id: string) => void;
  readonly flush: () => Promise<void>;
  readonly tellList: () => void;
}

/** What the list of kept projects can be asked for. */
export function listActions(store: Store, { shelf, hold, letGo, flush, tellList }: Parts): ListActions {
  const { keeping } = store;
  const say = (text: string, actions: Message["actions"] = []): void => {
    keeping.message.value = { text, actions };
  };

  /** Does something, and says why where the storage does not let it. */
  const trying = async (trouble: string, act: () => Promise<void>): Promise<void> => {
    try {
      await act();
    } catch (error) {
      const { what, remedy } = failureOf(error);
      say(`${trouble}: ${what}. ${remedy}`);
    }
  };

  const refresh = async (): Promise<void> => {
    const records = await shelf.list();
    keeping.list.value = [...records].sort((a, b) => b.changed - a.changed);
  };

  /** Does something with a kept project that no other tab may be writing, and says what stands against it. */
  const alone = (id: string, act: (record: ProjectRecord) => Promise<void>): Promise<void> =>
    trying("That did not work", async () => {
      const isOnPage = keeping.id.peek() === id;
      if (isOnPage ? keeping.isReading.peek() : !(await hold(id))) {
        say("This project is open in another tab. Close it there first.");
        return;
      }
      try {
        if (isOnPage) await flush();
        const record = (await shelf.list()).find((each) => each.id === id);
        if (record) await act(record);
      } finally {
        letGo(id);
      }
      await refresh();
      tellList();
    });

  /** Writes the next revision of a project that is not on the page. */
  const rewrite = async (record: ProjectRecord, changes: Partial<ProjectRecord>, text: string): Promise<void> => {
    const revision = record.revision + 1;
    const revisions = thinRevisions([...record.revisions, { revision, at: Date.now() }]);
    const dropped = record.revisions.filter((each) => !revisions.includes(each)).map((each) => each.revision);
    const next = { ...record, ...changes, revision, revisions };
    const outcome = await shelf.write({ record: next, text, base: record.revision, dropped, isSoleWriter: false });
    if (outcome === "conflict") say("Another tab changed this project just now, so nothing was done. Try again.");
  };
  const textOf = async (record: ProjectRecord): Promise<string> =>
    (await shelf.readText(record.id, record.revision)) ?? "";

  const bringBack = (id: string): Promise<void> =>
    alone(id, async (record) => rewrite(record, { deleted: null }, await textOf(record)));

  return {
    refresh,
    bringBack,
    open: async (id) => {
      if (keeping.id.peek() === id) return;
      await trying("The project could not be opened", async () => {
        await flush();
        await hold(id);
        const [found, link] = await Promise.all([readKept(shelf, id), shelf.readLink(id).catch(() => null)]);
        if (found.kind === "read") {
          beginProject(store, found.project, { kind: "kept", record: found.record, link });
          return;
        }
        letGo(id);
        if (found.kind === "missing") say("This project is no longer kept in this browser.");
        else keeping.unreadable.value = found.unreadable;
      });
    },
    openEarlier: async ({ record, earlier }) => {
      const read = earlier && parseProject(earlier.text);
      if (!read?.ok) return;
      await hold(record.id);
      const link = await shelf.readLink(record.id).catch(() => null);
      beginProject(store, read.value, { kind: "kept", record, link });
    },
    rename: async (id, typed) => {
      const name = typed.trim();
      if (name === "") return;
      if (keeping.id.peek() === id) {
        const [refusal] = renameProject(store, name);
        if (!refusal) await flush();
        return;
      }
      await alone(id, async (record) => {
        if (record.name === name) return;
        const read = parseProject(await textOf(record));
        const project = read.ok ? renamed(read.value, name) : null;
        if (!project || project.name !== name)
          say(`“${record.name}” can not be renamed: its settings can not be written.`);
        else await rewrite(record, { name, changed: Date.now() }, serializeProject(project));
      });
    },
    duplicate: (id) =>
      trying("It was not duplicated", async () => {
        if (keeping.id.peek() === id) await flush();
        const found = await readKept(shelf, id);
        if (found.kind !== "read") return say("This project can not be read, so it can not be duplicated.");
        const name = copyName(
          found.record.name,
          (await shelf.list()).map((each) => each.name),
        );
        const copy = renamed(found.project, name);
        const at = Date.now();
        const record = {
          ...found.record,
          id: crypto.randomUUID(),
          name: copy.name,
          changed: at,
          revision: 1,
          revisions: [{ revision: 1, at }],
        };
        await shelf.write({ record, text: serializeProject(copy), base: null, dropped: [], isSoleWriter: false });
        await refresh();
        tellList();
        say(`“${copy.name}” is a project of its own now.`);
      }),
    remove: (id) =>
      alone(id, async (record) => {
        if (keeping.id.peek() === id) closeProject(store);
        await rewrite(record, { deleted: Date.now() }, await textOf(record));
        say(`Deleted: ${record.name}.`, [{ label: "Undo", run: () => void bringBack(id) }]);
      }),
    empty: () =>
      trying("That did not work", async () => {
        const gone = (await shelf.list()).filter(({ deleted }) => deleted !== null);
        await shelf.remove(gone.map(({ id }) => id));
        await refresh();
        tellList();
      }),
  };
}

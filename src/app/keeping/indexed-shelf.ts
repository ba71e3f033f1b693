import { type DBSchema, type IDBPDatabase, openDB } from "idb";
import { BlockedError, MissingStorageError } from "./failure.ts";
import type { FileLink, ProjectRecord, TextRecord } from "./records.ts";
import { mayWrite, type Shelf } from "./shelf.ts";

interface Tables extends DBSchema {
  /** One small record a project, so that the list reads no text. */
  projects: { key: string; value: ProjectRecord };
  texts: { key: [string, number]; value: TextRecord };
  /** Files that projects are saved in. */
  files: { key: string; value: FileLink & { readonly id: string } };
}

export const databaseName = "tautrow";
const databaseVersion = 1;
/** An open that gives no answer for this long is told as held up; it goes on waiting. */
const patience_ms = 15_000;

/** Projects in the browser's own database. The connection is made when it is first needed, and anew when it was lost. */
export function createIndexedShelf(): Shelf {
  let database: IDBPDatabase<Tables> | null = null;
  let opening: Promise<IDBPDatabase<Tables>> | null = null;

  const open = async (onBlocked: () => void): Promise<IDBPDatabase<Tables>> => {
    if (typeof indexedDB === "undefined" || indexedDB === null) throw new MissingStorageError("no storage");
    const opened = await openDB<Tables>(databaseName, databaseVersion, {
      upgrade: (fresh, from) => {
        if (from < 1) {
          fresh.createObjectStore("projects", { keyPath: "id" });
          fresh.createObjectStore("texts", { keyPath: ["id", "revision"] });
          fresh.createObjectStore("files", { keyPath: "id" });
        }
      },
      blocked: onBlocked,
      // A newer page waits to bring the database up to its own version: it may.
      blocking: () => forget(opened),
      terminated: () => forget(opened),
    });
    opened.addEventListener("close", () => forget(opened));
    return opened;
  };
  const forget = (lost: IDBPDatabase<Tables>): void => {
    lost.close();
    if (database === lost) database = null;
  };
  const connected = (): Promise<IDBPDatabase<Tables>> =>
    new Promise((resolve, reject) => {
      const heldUp = (): void => reject(new BlockedError("another page holds the storage"));
      const timer = setTimeout(heldUp, patience_ms);
      opening ??= open(heldUp)
        .then((opened) => {
          database = opened;
          return opened;
        })
        .finally(() => {
          opening = null;
        });
      opening.then(resolve, reject).finally(() => clearTimeout(timer));
    });

  return {
    list: async () => (database ?? (await connected())).getAll("projects"),
    read: async (id) => {
      const connection = database ?? (await connected());
      const record = await connection.get("projects", id);
      return record ? { record, text: await readable(connection, id, record.revision) } : null;
    },
    readText: async (id, revision) => readable(database ?? (await connected()), id, revision),
    write: async ({ record, text, base, dropped, isSoleWriter }) => {
      const connection = database ?? (await connected());
      const transaction = connection.transaction(["projects", "texts"], "readwrite", { durability: "strict" });
      const done = settled(transaction.done);
      const [projects, texts] = [transaction.objectStore("projects"), transaction.objectStore("texts")];
      if (!isSoleWriter && !mayWrite(await projects.get(record.id), base)) {
        transaction.abort();
        await done;
        return "conflict";
      }
      const requests = [
        texts.add({ id: record.id, revision: record.revision, text }),
        projects.put(record),
        ...dropped.map((revision) => texts.put({ id: record.id, revision, text: null })),
        ...forgettable(record).map((revision) => texts.delete([record.id, revision])),
      ];
      // Of requests that fail together the transaction tells the reason.
      for (const request of requests) void settled(request);
      transaction.commit();
      const fault = await done;
      if (fault === null) return "written";
      // A text of that revision is there already.
      if (fault instanceof DOMException && fault.name === "ConstraintError") return "conflict";
      throw fault;
    },
    remove: async (ids) => {
      const connection = database ?? (await connected());
      const transaction = connection.transaction(["projects", "texts", "files"], "readwrite");
      for (const id of ids) {
        void settled(transaction.objectStore("projects").delete(id));
        void settled(transaction.objectStore("files").delete(id));
        void settled(transaction.objectStore("texts").delete(IDBKeyRange.bound([id, 0], [id, Infinity])));
      }
      await transaction.done;
    },
    readLink: async (id) => {
      const found = await (database ?? (await connected())).get("files", id);
      return found ? { handle: found.handle, stamp: found.stamp } : null;
    },
    writeLink: async (id, { handle, stamp }) => {
      await (database ?? (await connected())).put("files", { id, handle, stamp });
    },
  };
}

/** Of revisions this far back nobody needs to know any more that they were there. */
const remembered = 2000;
const forgottenTogether = 100;

/** Revisions whose empty records go with this one: a hundred every hundred revisions. */
function forgettable({ revision, revisions }: ProjectRecord): readonly number[] {
  if (revision % forgottenTogether !== 0 || revision <= remembered) return [];
  const kept = new Set(revisions.map((each) => each.revision));
  return Array.from({ length: forgottenTogether }, (_, i) => revision - remembered - i).filter(
    (each) => each > 0 && !kept.has(each),
  );
}

async function readable(connection: IDBPDatabase<Tables>, id: string, revision: number): Promise<string | null> {
  try {
    const found = await connection.get("texts", [id, revision]);
    return typeof found?.text === "string" ? found.text : null;
  } catch {
    return null;
  }
}

/** Null when it came about, else what it was refused with. */
async function settled(promise: Promise<unknown>): Promise<unknown> {
  try {
    await promise;
    return null;
  } catch (error) {
    return error ?? new Error("it was given up");
  }
}

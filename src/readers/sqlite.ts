import type { Database } from "sql.js";
import type { OutFile, SqlValue } from "../core/exchange/format.ts";
import { breathe } from "./breathe.ts";
import type { ReadingFollowed } from "./reading.ts";

/** Rows between two looks at the clock. */
const rowsAtATime = 200;
/** Longest that a page is held before it gets its turn. */
const held_ms = 30;

/**
 * An open SQLite database, empty or with the bytes of a file. SQLite is loaded when it is first asked for (some 440 kB packed), with its
 * program inside the script: that is one way for the page, a worker and the command line.
 */
export async function openDatabase(bytes: Uint8Array | null): Promise<Database> {
  const { default: load } = await import("sql.js/dist/sql-wasm-inline.js");
  const { Database } = await load();
  return new Database(bytes);
}

/** The bytes of a file whose content is a database; the page gets its turn in between. Rejects when it is stopped. */
export async function databaseBytes(file: OutFile, { signal }: ReadingFollowed = {}): Promise<Uint8Array> {
  if (file.content.kind !== "database") throw new Error(`${file.name} is no database`);
  const database = await openDatabase(null);
  try {
    let since = performance.now();
    const giveWay = async (): Promise<void> => {
      signal?.throwIfAborted();
      if (performance.now() - since < held_ms) return;
      await breathe();
      since = performance.now();
    };
    let isOpen = false;
    for (const { sql, rows } of file.content.statements()) {
      // Pragmas that mark the file are written outside of a transaction.
      if (!isOpen && !sql.startsWith("PRAGMA")) {
        database.run("BEGIN");
        isOpen = true;
      }
      if (rows === null) database.run(sql);
      else await runEach(database, sql, rows, giveWay);
    }
    if (isOpen) database.run("COMMIT");
    return database.export();
  } finally {
    database.close();
  }
}

async function runEach(
  database: Database,
  sql: string,
  rows: Iterable<readonly SqlValue[]>,
  giveWay: () => Promise<void>,
): Promise<void> {
  const statement = database.prepare(sql);
  let count = 0;
  for (const row of rows) {
    statement.run([...row]);
    if (++count % rowsAtATime === 0) await giveWay();
  }
  statement.free();
}

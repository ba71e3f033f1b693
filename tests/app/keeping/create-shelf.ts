import type { ProjectRecord } from "../../../src/app/keeping/records.ts";
import type { Clock } from "../../../src/app/keeping/save-schedule.ts";
import { mayWrite, type Shelf, type Writing } from "../../../src/app/keeping/shelf.ts";

export interface TestShelf extends Shelf {
  readonly records: Map<string, ProjectRecord>;
  readonly texts: Map<string, string>;
  readonly writings: Writing[];
  /** What the next writes are refused with; null lets them be. */
  refuse: Error | null;
}

/** A shelf in memory that holds to the same rule as the browser's. */
export function createShelf(): TestShelf {
  const records = new Map<string, ProjectRecord>();
  const texts = new Map<string, string>();
  const shelf: TestShelf = {
    records,
    texts,
    writings: [],
    refuse: null,
    list: () => Promise.resolve([...records.values()]),
    read: (id) => {
      const record = records.get(id);
      return Promise.resolve(record ? { record, text: texts.get(`${id} ${record.revision}`) ?? null } : null);
    },
    readText: (id, revision) => Promise.resolve(texts.get(`${id} ${revision}`) ?? null),
    write: (writing) => {
      shelf.writings.push(writing);
      if (shelf.refuse) return Promise.reject(shelf.refuse);
      const { record, text, base, dropped } = writing;
      if (!mayWrite(records.get(record.id), base)) return Promise.resolve("conflict");
      records.set(record.id, record);
      texts.set(`${record.id} ${record.revision}`, text);
      for (const revision of dropped) texts.delete(`${record.id} ${revision}`);
      return Promise.resolve("written");
    },
    remove: (ids) => {
      for (const id of ids) records.delete(id);
      return Promise.resolve();
    },
    readLink: () => Promise.resolve(null),
    writeLink: () => Promise.resolve(),
  };
  return shelf;
}

export interface TestClock extends Clock {
  /** Lets time pass, with everything that was to happen in it. */
  pass(time_ms: number): Promise<void>;
}

/** A clock that stands still until it is told. */
export function createClock(): TestClock {
  let now = 1_000_000;
  const calls: { at: number; run: () => void }[] = [];
  return {
    now: () => now,
    later: (run, delay_ms) => {
      const call = { at: now + delay_ms, run };
      calls.push(call);
      return () => {
        if (calls.includes(call)) calls.splice(calls.indexOf(call), 1);
      };
    },
    pass: async (time_ms) => {
      const until = now + time_ms;
      for (;;) {
        const next = calls.filter(({ at }) => at <= until).sort((a, b) => a.at - b.at)[0];
        if (!next) break;
        now = next.at;
        calls.splice(calls.indexOf(next), 1);
        next.run();
        await settle();
      }
      now = until;
      await settle();
    },
  };
}

/** Lets everything that waits only for promises go on. */
export function settle(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, 0));
}

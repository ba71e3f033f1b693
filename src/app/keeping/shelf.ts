import type { FileLink, ProjectRecord } from "./records.ts";

export interface KeptText {
  readonly record: ProjectRecord;
  /** The newest text; null when the browser has lost it or can not read it. */
  readonly text: string | null;
}

export interface Writing {
  readonly record: ProjectRecord;
  readonly text: string;
  /** The revision this page last read or wrote; null for a project that is kept for the first time. */
  readonly base: number | null;
  /** Texts that are taken away by this. */
  readonly dropped: readonly number[];
  /**
   * True when this tab has the lock of the project: then nothing is read first, so that all is handed over at once, even while the page
   * goes away. That nobody else has written a text of the same revision is seen to all the same: it can not be added twice.
   */
  readonly isSoleWriter: boolean;
}

/** Where projects are kept. Every call may be refused by the browser, with an exception that `failureOf` puts into words. */
export interface Shelf {
  list(): Promise<readonly ProjectRecord[]>;
  read(id: string): Promise<KeptText | null>;
  /** An older text; null when it is gone or can not be read. */
  readText(id: string, revision: number): Promise<string | null>;
  /** "conflict", and nothing written, when another page has written the project since. */
  write(writing: Writing): Promise<"written" | "conflict">;
  /** Takes projects away for good. */
  remove(ids: readonly string[]): Promise<void>;
  readLink(id: string): Promise<FileLink | null>;
  writeLink(id: string, link: FileLink): Promise<void>;
}

/** Whether a text made from `base` may take the place of what is stored: never when that is something this page has not seen. */
export function mayWrite(stored: ProjectRecord | undefined, base: number | null): boolean {
  // What is gone altogether, because the person cleared the storage, overwrites nothing.
  return stored === undefined || stored.revision === base;
}

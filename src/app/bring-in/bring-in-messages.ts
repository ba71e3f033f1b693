import type { UnitSystem } from "../../core/units.ts";
import type { FoundFile, ReadingAnswers } from "../../readers/reading.ts";

/** What the page asks its worker. The file is handed over as it is: nothing of it is read on the page. */
export interface FileQuestion {
  readonly number: number;
  readonly file: File;
  readonly answers: ReadingAnswers;
  /** Units that sentences are written in. */
  readonly units: UnitSystem;
}

/** What the worker answers to the question of the same number: progress any number of times, then one of the others. */
export type FileAnswer = { readonly number: number } & (
  | { readonly kind: "progress"; readonly share_ratio: number }
  | { readonly kind: "found"; readonly found: FoundFile; readonly sentences: readonly string[] }
  | { readonly kind: "refused"; readonly sentences: readonly string[] }
);

/** Someone to ask. */
export interface FileWorker {
  ask(question: FileQuestion): void;
  /** Ends it, whatever it is at: that is how reading is stopped. */
  end(): void;
}

/** Starts a worker that tells its answers; `failed` is called when it breaks. */
export type StartFileWorker = (tell: (answer: FileAnswer) => void, failed: () => void) => FileWorker;

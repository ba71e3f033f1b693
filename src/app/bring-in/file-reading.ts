import { type ReadonlySignal, signal } from "@preact/signals";
import type { UnitSystem } from "../../core/units.ts";
import { type FoundFile, noAnswers, type ReadingAnswers } from "../../readers/reading.ts";
import type { FileAnswer, FileWorker, StartFileWorker } from "./bring-in-messages.ts";

/** How far a file of another format has come. */
export type FileState =
  | { readonly kind: "none" }
  | { readonly kind: "reading"; readonly share_ratio: number }
  | { readonly kind: "refused"; readonly sentences: readonly string[] }
  | { readonly kind: "found"; readonly found: FoundFile; readonly sentences: readonly string[] };

const broken =
  "The part of the page that reads files could not be loaded, or broke off. Try again when the network is there.";

/** One file, from being chosen to being told what it holds, read by a worker that is ended when it is stopped. */
export class FileReading {
  readonly #startWorker: StartFileWorker;
  readonly #state = signal<FileState>({ kind: "none" });
  readonly #answers = signal<ReadingAnswers>(noAnswers);
  #worker: FileWorker | null = null;
  #number = 0;

  constructor(startWorker: StartFileWorker) {
    this.#startWorker = startWorker;
  }

  get state(): ReadonlySignal<FileState> {
    return this.#state;
  }

  /** What has been answered to what the file leaves open. */
  get answers(): ReadonlySignal<ReadingAnswers> {
    return this.#answers;
  }

  /** Reads the file, with answers to what it leaves open. */
  read(file: File, units: UnitSystem, answers: ReadingAnswers = noAnswers): void {
    this.#state.value = { kind: "reading", share_ratio: 0 };
    this.#answers.value = answers;
    this.#worker ??= this.#startWorker(this.#tell, this.#failed);
    this.#worker.ask({ number: ++this.#number, file, answers, units });
  }

  /** Stops whatever is going on. */
  readonly stop = (): void => {
    this.#end();
    this.#state.value = { kind: "none" };
  };

  readonly #tell = (answer: FileAnswer): void => {
    const state = this.#state.peek();
    if (answer.number !== this.#number || state.kind !== "reading") return;
    switch (answer.kind) {
      case "progress":
        this.#state.value = { ...state, share_ratio: answer.share_ratio };
        return;
      case "found":
        this.#state.value = { kind: "found", found: answer.found, sentences: answer.sentences };
        return;
      case "refused":
        this.#end();
        this.#state.value = { kind: "refused", sentences: answer.sentences };
        return;
      default:
        answer satisfies never;
    }
  };

  readonly #failed = (): void => {
    this.#end();
    this.#state.value = { kind: "refused", sentences: [broken] };
  };

  #end(): void {
    this.#worker?.end();
    this.#worker = null;
  }
}

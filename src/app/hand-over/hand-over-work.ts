import { effect, type Signal, signal } from "@preact/signals";
import type { HandOverChoice } from "../../core/exchange/choice.ts";
import type { OutFile } from "../../core/exchange/format.ts";
import { handingOver } from "../../core/exchange/hand-over.ts";
import type { Finding } from "../../core/finding.ts";
import { downloadBlob, fileStem } from "../download.ts";
import type { Store } from "../store.ts";
import { inTurns, pageTurns } from "./in-turns.ts";
import { unsettled, whenSettled } from "./unsettled.ts";
import { type Progress, written } from "./written.ts";

/** Where the writing of files is. */
export type WorkState =
  | { readonly kind: "none" | "stopped" }
  /** What is waited for, in words. */
  | { readonly kind: "waiting"; readonly parts: readonly string[] }
  | { readonly kind: "writing"; readonly progress: Progress | null }
  | { readonly kind: "done"; readonly name: string; readonly bytes: number; readonly files: number }
  | { readonly kind: "refused"; readonly findings: readonly Finding[] }
  | { readonly kind: "failed"; readonly reason: string };

/** The writing of files of a page: it goes on while its step is closed, and ends when another project is opened. */
export interface HandOverWork {
  readonly state: Signal<WorkState>;
  start(choice: HandOverChoice): Promise<void>;
  stop(): void;
}

const works = new WeakMap<Store, HandOverWork>();

/** The work of a page. */
export function handOverWorkOf(store: Store): HandOverWork {
  const known = works.get(store);
  if (known) return known;
  const work = createHandOverWork(store, downloadBlob);
  works.set(store, work);
  effect(() => {
    if (store.opened.value === 0) return;
    work.stop();
    work.state.value = { kind: "none" };
  });
  return work;
}

/** Work whose files go to `save`. */
export function createHandOverWork(store: Store, save: (name: string, blob: Blob) => void): HandOverWork {
  const state = signal<WorkState>({ kind: "none" });
  let control: AbortController | null = null;

  const run = async (choice: HandOverChoice, signal: AbortSignal): Promise<WorkState> => {
    const parts = unsettled(store, choice.of);
    if (parts.length > 0) {
      state.value = { kind: "waiting", parts };
      await whenSettled(store, choice.of, signal);
    }
    const plan = store.shownPlan.peek();
    if (signal.aborted || plan === null) return { kind: "stopped" };
    state.value = { kind: "writing", progress: null };
    const turns = pageTurns(signal);
    await turns.breath();
    const writtenAt = new Date().toISOString();
    const handed = await inTurns(handingOver(plan, choice, writtenAt), turns);
    if (handed === null) return { kind: "stopped" };
    if (!handed.result.ok) return { kind: "refused", findings: handed.result.findings };
    const { files } = handed.result.value;
    const whole = await written(
      files,
      {
        stem: fileStem(plan.project.name),
        archive: choice.as,
        writtenAt,
        databaseBytes,
        tell: (progress) => {
          if (!signal.aborted) state.value = { kind: "writing", progress };
        },
      },
      turns,
    );
    if (whole === null) return { kind: "stopped" };
    save(whole.name, whole.blob);
    return { kind: "done", name: whole.name, bytes: whole.blob.size, files: files.length };
  };

  return {
    state,
    start: async (choice) => {
      control?.abort();
      const mine = new AbortController();
      control = mine;
      const end = await run(choice, mine.signal).catch((problem: unknown): WorkState => {
        // A database that is stopped says so by what it throws.
        if (mine.signal.aborted) return { kind: "stopped" };
        console.error(problem);
        return { kind: "failed", reason: problem instanceof Error ? problem.message : String(problem) };
      });
      if (control !== mine) return;
      control = null;
      state.value = end;
    },
    stop: () => control?.abort(),
  };
}

/** SQLite is fetched when a file asks for it. */
async function databaseBytes(file: OutFile, signal: AbortSignal): Promise<Uint8Array> {
  const sqlite = await import("../../readers/sqlite.ts");
  return sqlite.databaseBytes(file, { signal });
}

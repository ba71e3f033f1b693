import type { Browser, Page } from "@playwright/test";

/** One task of the page's own thread. */
export interface TracedTask {
  /** From its beginning to its end by the clock: also while it waits for the picture to be drawn, or for a processor. */
  readonly wall_ms: number;
  /** What the processor worked on it. */
  readonly processor_ms: number;
}

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  readonly dur?: number;
  readonly tdur?: number;
  readonly args?: { readonly name?: string };
}

/** Every task of the page's thread while something is done, as the browser's own trace has them. */
export async function tracedTasks(browser: Browser, page: Page, act: () => Promise<void>): Promise<TracedTask[]> {
  await browser.startTracing(page, { categories: ["toplevel"] });
  await act();
  const trace: { readonly traceEvents: readonly TraceEvent[] } = JSON.parse((await browser.stopTracing()).toString());
  const threads = new Set(
    trace.traceEvents.flatMap(({ name, args, pid, tid }) =>
      name === "thread_name" && args?.name === "CrRendererMain" ? [`${pid}:${tid}`] : [],
    ),
  );
  const tasks = trace.traceEvents.filter(
    ({ name, ph, pid, tid }) => ph === "X" && name.endsWith("RunTask") && threads.has(`${pid}:${tid}`),
  );
  if (tasks.length === 0) throw new Error("the trace has no task of the page");
  return tasks.map(({ dur = 0, tdur = 0 }) => ({ wall_ms: dur / 1000, processor_ms: tdur / 1000 }));
}

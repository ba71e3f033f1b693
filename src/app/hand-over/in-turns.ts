/** How work is done on a page that must go on answering. */
export interface Turns {
  /** Stops the work between two of its steps. */
  readonly signal: AbortSignal;
  readonly now_ms: () => number;
  /** Lets the page do something else; resolves when it is the work's turn again. */
  readonly breath: () => Promise<void>;
}

/** As long as the page is held in one go; the step that is under way then is ended. */
export const turn_ms = 45;

/**
 * Takes work step by step, and lets the page breathe whenever it has been held for `turn_ms`; `each` is called for what a step gives, `rest`
 * at the end of every turn. Resolves with what the work comes to, or with null when it was stopped.
 */
export async function inTurns<Step, Result>(
  work: Iterator<Step, Result, undefined>,
  { signal, now_ms, breath }: Turns,
  each: (step: Step) => void = () => undefined,
  rest: () => void = () => undefined,
): Promise<{ readonly result: Result } | null> {
  let begun_ms = now_ms();
  while (!signal.aborted) {
    const step = work.next();
    if (step.done === true) {
      rest();
      return { result: step.value };
    }
    each(step.value);
    if (now_ms() - begun_ms < turn_ms) continue;
    rest();
    await breath();
    begun_ms = now_ms();
  }
  work.return?.();
  return null;
}

/** The page's own turns. A message is not held back in a page that is out of sight, as timers are. */
export function pageTurns(signal: AbortSignal): Turns {
  return { signal, now_ms: () => performance.now(), breath };
}

function breath(): Promise<void> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(null);
  });
}

/** The passing of time, so that a test can make it pass. */
export interface Clock {
  now(): number;
  /** Calls back later; the answer takes the call away again. */
  later(run: () => void, delay_ms: number): () => void;
}

export interface SaveSchedule {
  /** Something changed: it is saved after a short quiet, but never long after the first change. */
  changed(): void;
  /** Saves now what has changed and not been saved; done when nothing is being saved any more. */
  flush(): Promise<void>;
  readonly isBusy: () => boolean;
  /** Takes away what was to be saved later. */
  stop(): void;
}

/** Typing is over, for now. */
const quiet_ms = 100;
/** Longest from a change to the beginning of its saving: on a slow machine that is busy drawing, the rest of a second is not much. */
const longest_ms = 250;

/** Decides when to save. Saves never overlap; what changes during one is saved after it. */
export function createSaveSchedule(clock: Clock, save: () => Promise<void>): SaveSchedule {
  let firstChange: number | null = null;
  let cancel: (() => void) | null = null;
  let saving: Promise<void> | null = null;

  const plan = (): void => {
    if (firstChange === null || saving) return;
    cancel?.();
    const left_ms = firstChange + longest_ms - clock.now();
    cancel = clock.later(begin, Math.max(0, Math.min(quiet_ms, left_ms)));
  };
  const begin = (): void => {
    cancel?.();
    cancel = null;
    firstChange = null;
    const running = save().finally(() => {
      if (saving === running) saving = null;
      plan();
    });
    saving = running;
  };
  return {
    changed: () => {
      firstChange ??= clock.now();
      plan();
    },
    flush: async () => {
      // What is being saved now may be older than what is there.
      while (saving || firstChange !== null) {
        if (!saving) begin();
        await saving;
      }
    },
    isBusy: () => saving !== null,
    stop: () => {
      cancel?.();
      cancel = null;
      firstChange = null;
    },
  };
}

/** The machine's clock. */
export const machineClock: Clock = {
  now: () => Date.now(),
  later: (run, delay_ms) => {
    const timer = setTimeout(run, delay_ms);
    return () => clearTimeout(timer);
  },
};

/** The passing of time, so that a test can make it pass. */
export interface Clock {
  now(): number;
  /** Calls back later; the answer takes the call away again. */
  later(run: () => void, delay_ms: number): () => void;
}

export interface SaveSchedule {
  /** Something changed: it is saved at once, or soon after what was saved before. */
  changed(): void;
  /** Saves now what has changed and not been saved; done when nothing is being saved any more. */
  flush(): Promise<void>;
  readonly isBusy: () => boolean;
  /** Takes away what was to be saved later. */
  stop(): void;
}

/** From one saving to the next at least. */
const apart_ms = 250;

/** Decides when to save. Saves never overlap; what changes during one is saved after it. */
export function createSaveSchedule(clock: Clock, save: () => Promise<void>): SaveSchedule {
  let isUnsaved = false;
  let begun = Number.NEGATIVE_INFINITY;
  let cancel: (() => void) | null = null;
  let saving: Promise<void> | null = null;

  const plan = (): void => {
    if (!isUnsaved || saving || cancel) return;
    cancel = clock.later(begin, Math.max(0, begun + apart_ms - clock.now()));
  };
  const begin = (): void => {
    cancel?.();
    cancel = null;
    isUnsaved = false;
    begun = clock.now();
    const running = save().finally(() => {
      if (saving === running) saving = null;
      plan();
    });
    saving = running;
  };
  return {
    changed: () => {
      isUnsaved = true;
      plan();
    },
    flush: async () => {
      // What is being saved now may be older than what is there.
      while (saving || isUnsaved) {
        if (!saving) begin();
        await saving;
      }
    },
    isBusy: () => saving !== null,
    stop: () => {
      cancel?.();
      cancel = null;
      isUnsaved = false;
    },
  };
}

/** The machine's clock. */
export const machineClock: Clock = {
  now: () => Date.now(),
  later: (run, delay_ms) => {
    if (delay_ms <= 0) {
      // Before the page draws what changed, which may take a while.
      let isWanted = true;
      queueMicrotask(() => {
        if (isWanted) run();
      });
      return () => {
        isWanted = false;
      };
    }
    const timer = setTimeout(run, delay_ms);
    return () => clearTimeout(timer);
  },
};

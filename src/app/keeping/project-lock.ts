/** The right to write one project, of which the browser gives one at a time to all tabs together. */
export interface ProjectLock {
  readonly isHeld: () => boolean;
  /** Takes it if nobody has it. */
  hold(): Promise<boolean>;
  /** Waits until it is free and takes it then; the answer ends the waiting. */
  wait(onHeld: () => void): () => void;
  /** Takes it away from a tab that does not answer. */
  steal(): Promise<boolean>;
  release(): void;
}

/** The lock of a project. `onStolen` is called when another tab took it. Null where the browser has no locks. */
export function createProjectLock(id: string, onStolen: () => void): ProjectLock | null {
  // Some browsers have locks at secure addresses only.
  const { locks }: { readonly locks?: LockManager } = navigator;
  if (!locks) return null;
  const name = `tautrow project ${id}`;
  let release: (() => void) | null = null;
  const held = (): Promise<void> =>
    new Promise((resolve) => {
      release = () => {
        release = null;
        resolve();
      };
    });
  const ask = (options: LockOptions): Promise<boolean> =>
    new Promise((resolve) => {
      let wasHeld = false;
      locks
        .request(name, options, (lock) => {
          resolve(lock !== null);
          if (!lock) return undefined;
          wasHeld = true;
          return held();
        })
        .catch(() => {
          resolve(false);
          if (!wasHeld) return;
          release = null;
          onStolen();
        });
    });
  return {
    isHeld: () => release !== null,
    hold: () => (release ? Promise.resolve(true) : ask({ ifAvailable: true })),
    wait: (onHeld) => {
      const ending = new AbortController();
      void ask({ signal: ending.signal }).then((isHeld) => {
        if (isHeld) onHeld();
      });
      return () => ending.abort();
    },
    steal: () => ask({ steal: true }),
    release: () => release?.(),
  };
}

/** Someone to ask beside the page, one question after another. */
export interface Asked<Job> {
  ask(question: { readonly number: number; readonly job: Job }): void;
  /** Ends it, whatever it is at. */
  end(): void;
}

/** A worker that has been busy this long with what is no longer shown is given up for a new one. */
const patience_ms = 400;

/** Asks a worker what is wanted, one question at a time, the newest first; answers to what is no longer asked are dropped. */
export function newestFirst<Job, Answer extends { readonly number: number }>(
  start: (tell: (answer: Answer) => void) => Asked<Job>,
  isSame: (one: Job, other: Job) => boolean,
  learn: (job: Job, answer: Answer) => void,
) {
  let worker: Asked<Job> | null = null;
  let asked: { readonly job: Job; readonly number: number; readonly at_ms: number } | null = null;
  let number = 0;

  const tell = (answer: Answer): void => {
    if (answer.number !== asked?.number) return;
    const { job } = asked;
    asked = null;
    // What is shown is planned anew, and the newest question is asked then.
    learn(job, answer);
  };
  const end = (): void => {
    worker?.end();
    worker = null;
    asked = null;
  };
  return {
    /** While something is held, what is being answered is waited for: it follows at the pace of the worker. */
    want: (job: Job, isHeld: boolean): void => {
      if (asked !== null) {
        if (isHeld || isSame(asked.job, job) || performance.now() - asked.at_ms < patience_ms) return;
        end();
      }
      worker ??= start(tell);
      asked = { job, number: ++number, at_ms: performance.now() };
      worker.ask({ number, job });
    },
    end,
  };
}

/** What a command talks to; `main.ts` binds it to the process, tests to arrays. */
export interface Terminal {
  /** Standard output: what was asked for, and nothing else. */
  out(content: string | Uint8Array): void;
  /** Standard error: progress and complaints. */
  note(text: string): void;
  /** Writes over the line before on standard error; null when no person looks at it. */
  readonly progress: ((line: string) => void) | null;
  /** Reads standard input to its end, or null when a person sits at it. */
  readonly input: (() => Promise<string>) | null;
  /** Folder that relative paths start from. */
  readonly folder: string;
  /** YYYY-MM-DD. */
  readonly today: string;
  /** The moment that files state they were written at, ISO 8601. */
  readonly now: string;
}

/** Exit codes: 0 fine, 1 a finding of severity error, 2 wrong usage or an unreadable path, 70 a bug. */
export const exitCode = { fine: 0, findingError: 1, wrongUsage: 2, bug: 70 } as const;

/** The command was asked for something it cannot do, or for a file it cannot read; the message says which and what to do. */
export class UsageError extends Error {}

import type { Terminal } from "./terminal.ts";

/** The terminal of this process. `scripts` are the npm scripts that run it: for those, paths start where the person stands. */
export function processTerminal(scripts: readonly string[]): Terminal {
  const script = process.env.npm_lifecycle_event;
  // npm moves to the package's folder before it runs a script and keeps the former one here.
  const standing = script !== undefined && scripts.includes(script) ? process.env.INIT_CWD : undefined;
  return {
    out: (content) => process.stdout.write(content),
    note: (text) => process.stderr.write(text),
    // Back to the start of the line, and what is left of the line before wiped out.
    progress: process.stderr.isTTY ? (line) => process.stderr.write(`\r${line}\u001b[K`) : null,
    input: process.stdin.isTTY ? null : standardInput,
    folder: standing ?? process.cwd(),
    today: localDay(new Date()),
    now: `${new Date().toISOString().slice(0, 19)}Z`,
  };
}

async function standardInput(): Promise<string> {
  const chunks: Buffer[] = [];
  for await (const chunk of process.stdin) chunks.push(Buffer.from(chunk));
  return Buffer.concat(chunks).toString("utf8");
}

/** The day by the machine's own clock. */
function localDay(now: Date): string {
  const two = (number: number) => String(number).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { onTestFinished } from "vitest";
import { run } from "../../src/cli/run.ts";

/** What a command line said and how it ended. */
export interface Said {
  readonly code: number;
  readonly out: string;
  readonly notes: string;
}

/** Runs a command line in this process, in a folder, with text on standard input or with a person sitting at it. */
export async function say(
  args: readonly string[],
  { folder = process.cwd(), input = null as string | null, progress = null as ((line: string) => void) | null } = {},
): Promise<Said> {
  const out: string[] = [];
  const notes: string[] = [];
  const code = await run(args, {
    out: (content) => out.push(typeof content === "string" ? content : Buffer.from(content).toString("latin1")),
    note: (text) => notes.push(text),
    progress,
    input: input === null ? null : () => Promise.resolve(input),
    folder,
    today: "2026-05-01",
    now: "2026-05-01T08:00:00Z",
  });
  return { code, out: out.join(""), notes: notes.join("") };
}

/** A folder of its own with files in it, gone when the test is over. */
export function createFolder(files: Readonly<Record<string, string>> = {}): string {
  const folder = mkdtempSync(join(tmpdir(), "tautrow-test-"));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
  return folder;
}

/** A bare polygon of about 70 by 90 m in open country, invented. */
export function createParcelText(lon = 14.2, lat = 48.4): string {
  const ring = [
    [lon, lat],
    [lon + 0.00095, lat],
    [lon + 0.00095, lat + 0.0008],
    [lon, lat + 0.0008],
    [lon, lat],
  ];
  return JSON.stringify({ type: "Polygon", coordinates: [ring] });
}

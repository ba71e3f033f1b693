import { readFileSync } from "node:fs";
import { basename } from "node:path";
import { readFile } from "../../src/readers/read-file.ts";
import { type FoundFile, noAnswers, type ReadingAnswers } from "../../src/readers/reading.ts";

/** What our readers make of some bytes by a name. */
export function readBytes(name: string, bytes: Uint8Array, answers: Partial<ReadingAnswers> = {}) {
  const blob = new Blob([Uint8Array.from(bytes)]);
  return readFile(
    { name, size: blob.size, slice: (start, end) => blob.slice(start, end) },
    { ...noAnswers, ...answers },
  );
}

/** What they make of a file of tests/fixtures. */
export function readFixture(path: string, answers: Partial<ReadingAnswers> = {}) {
  return readBytes(basename(path), fixtureBytes(path), answers);
}

export function fixtureBytes(path: string): Uint8Array {
  return new Uint8Array(readFileSync(new URL(`../fixtures/${path}`, import.meta.url)));
}

/** What a file holds; throws with the findings when it cannot be read. */
export async function found(reading: ReturnType<typeof readBytes>): Promise<FoundFile> {
  const outcome = await reading;
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.findings));
  return outcome.value;
}

/** The codes of the findings of a reading. */
export async function codes(reading: ReturnType<typeof readBytes>): Promise<readonly string[]> {
  return (await reading).findings.map(({ code }) => code);
}

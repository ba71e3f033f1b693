import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { extname, join } from "node:path";
import { z } from "zod";
import { readers } from "../../../src/readers/read-file.ts";
import { fullFile, type LargeFile, large_bytes, largeFiles, writeLarge } from "./large-files.ts";

/** What a process may have at most while it reads or refuses a file. */
const most_mb = 512;

const reading = z.object({
  ok: z.boolean(),
  features: z.number(),
  codes: z.array(z.string()),
  seconds: z.number(),
  before_mb: z.number(),
  peak_mb: z.number(),
});

/** What has to come of a file: it is refused, it is read, or either, as long as there is an answer. */
type Wanted = "refused" | "read" | "answered";

/**
 * Files of 200 MB and archives that unpack to a gigabyte, each given to a process of its own: refused with a finding and within the memory.
 * Then the same as large as their reader takes: answered within the memory. Then, for every format that is text, a sound file of that size:
 * read within the memory. Prints a line each and gives the number of faults.
 */
export function soakLargeFiles(): number {
  const folder = mkdtempSync(join(tmpdir(), "tautrow-large-"));
  const faults = (file: LargeFile, size_bytes: number, wanted: Wanted) =>
    isSound(folder, file, size_bytes, wanted) ? 0 : 1;
  let failed = 0;
  try {
    for (const file of largeFiles) failed += faults(file, large_bytes, "refused");
    for (const file of largeFiles) {
      const reader = readers.find(({ endings }) => endings.includes(extname(file.name).slice(1)));
      if (file.isOfAnySize && reader !== undefined) failed += faults(file, reader.most_bytes, "answered");
    }
    for (const { endings, most_bytes } of readers) {
      const file = endings.map((ending) => fullFile(ending)).find((each) => each !== null);
      if (file) failed += faults(file, most_bytes, "read");
    }
    return failed;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function isSound(folder: string, file: LargeFile, size_bytes: number, wanted: Wanted): boolean {
  const path = join(folder, file.name);
  writeLarge(path, file, size_bytes);
  const { stdout, stderr, status } = spawnSync(
    process.execPath,
    ["--import", "tsx", join(import.meta.dirname, "read-one.ts"), path],
    { encoding: "utf8", timeout: 300_000 },
  );
  const size_mb = statSync(path).size / 1e6;
  rmSync(path);
  const told = `${file.name} (${size_mb.toFixed(1)} MB), ${file.told}`;
  if (status !== 0) {
    console.log(`FAIL ${told}: the reader broke down: ${stderr.trim().split("\n").at(-1)}`);
    return false;
  }
  const { ok, features, codes, seconds, before_mb, peak_mb } = reading.parse(JSON.parse(stdout));
  const isFine = isAsWanted(wanted, ok, features, codes) && peak_mb < most_mb;
  const came = ok ? `${features} features` : codes.join(", ");
  console.log(
    `${isFine ? "ok  " : "FAIL"} ${told}: ${came}; ${seconds.toFixed(1)} s, at most ${peak_mb.toFixed(0)} MB (${before_mb.toFixed(0)} before)`,
  );
  return isFine;
}

function isAsWanted(wanted: Wanted, ok: boolean, features: number, codes: readonly string[]): boolean {
  switch (wanted) {
    case "refused":
      return !ok && codes.length > 0;
    case "read":
      return ok && features > 0;
    case "answered":
      return ok || codes.length > 0;
    default:
      return wanted satisfies never;
  }
}

import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/*
 * Programs outside the project that read what it writes. They come from the system's packages; where one is missing its checks are skipped,
 * and `npm test` says so (see `missingPrograms`).
 */
export const programs = {
  ogrinfo: { ask: ["--version"], package: "gdal-bin" },
  ogr2ogr: { ask: ["--version"], package: "gdal-bin" },
  gdaltransform: { ask: ["--version"], package: "gdal-bin" },
  gdalsrsinfo: { ask: ["--version"], package: "gdal-bin" },
  gpsbabel: { ask: ["-V"], package: "gpsbabel" },
  xmllint: { ask: ["--version"], package: "libxml2-utils" },
  ssconvert: { ask: ["--version"], package: "gnumeric" },
  ezdxf: { ask: null, package: "python3-ezdxf" },
} as const satisfies Readonly<Record<string, { readonly ask: readonly string[] | null; readonly package: string }>>;
export type Program = keyof typeof programs;

const found = new Map<Program, boolean>();

/** Whether a program can be run here. */
export function has(program: Program): boolean {
  const known = found.get(program);
  if (known !== undefined) return known;
  const { ask } = programs[program];
  const { error, status } =
    ask === null ? spawnSync("/usr/bin/python3", ["-c", "import ezdxf"]) : spawnSync(program, [...ask]);
  const is = error === undefined && status !== null && (ask !== null || status === 0);
  found.set(program, is);
  return is;
}

/** What cannot be run here, by name. */
export function missingPrograms(): readonly Program[] {
  return namesOf(programs).filter((program) => !has(program));
}

function namesOf<K extends string>(record: Readonly<Record<K, unknown>>): readonly K[] {
  const names: K[] = [];
  for (const name in record) names.push(name);
  return names;
}

/** What a program says on its standard output; throws with what it complained of when it fails. */
export function said(command: string, args: readonly string[], input?: string): string {
  const { status, stdout, stderr, error } = spawnSync(command, [...args], {
    encoding: "utf8",
    maxBuffer: 256 * 1024 * 1024,
    ...(input === undefined ? {} : { input }),
    // Programs write numbers and sentences alike on every machine.
    env: { ...process.env, LC_ALL: "C.UTF-8" },
  });
  if (error !== undefined) throw error;
  if (status !== 0) throw new Error(`${command} ${args.join(" ")} gave ${status}: ${stderr}`);
  return stdout;
}

/** Writes files into a folder of their own, hands it to the work, and takes it away again. */
export function inFolder<T>(files: Readonly<Record<string, string | Uint8Array>>, work: (folder: string) => T): T {
  const folder = mkdtempSync(join(tmpdir(), "tautrow-"));
  try {
    for (const [name, content] of Object.entries(files)) writeFileSync(join(folder, name), content);
    return work(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

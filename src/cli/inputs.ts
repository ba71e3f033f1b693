import { readFile, stat } from "node:fs/promises";
import { basename, dirname, extname, resolve } from "node:path";
import { type Terminal, UsageError } from "./terminal.ts";

/** One project's text and a name to call it by. */
export interface Input {
  /** As given, with "#2" for the second text of a sequence. */
  readonly name: string;
  readonly text: string;
}

/** Largest file whose text is read: a sequence of several projects may have more than one project may. */
const mostFile_bytes = 150e6;

/** RFC 8142: in a sequence of GeoJSON texts a record separator stands before every text. */
const recordSeparator = "\u001e";

/** The files to read: those given, else standard input when something is piped in. */
export function inputNames(files: readonly string[], terminal: Terminal): readonly string[] {
  if (files.length > 0) return files;
  if (terminal.input === null) throw new UsageError("Give a file, or - to read standard input.");
  return ["-"];
}

/** The texts of one file or of standard input. Throws a UsageError for a path that cannot be read. */
export async function readInput(name: string, terminal: Terminal): Promise<readonly Input[]> {
  const text = name === "-" ? await standardInput(terminal) : await fileText(name, terminal);
  const called = name === "-" ? "standard input" : name;
  if (!text.trimStart().startsWith(recordSeparator)) return [{ name: called, text }];
  const records = text.split(recordSeparator).filter((record) => record.trim() !== "");
  return records.map((record, index) => ({ name: `${called}#${index + 1}`, text: record }));
}

/**
 * A folder name for each of several inputs: the file's name without its ending, or its folder's name where every project is called
 * "project"; only letters, digits, dot, dash and underline, never leading out of the folder, no two the same.
 */
export function folderNames(names: readonly string[], folder: string): readonly string[] {
  const taken = new Set<string>();
  return names.map((name) => {
    const [, path = name, record = ""] = /^(.*?)(#\d+)?$/.exec(name) ?? [];
    const base = basename(path, extname(path));
    const called = base === "project" ? basename(dirname(resolve(folder, path))) : base;
    const plain =
      `${called}${record.replace("#", "-")}`.replace(/[^\p{L}\p{N}._-]+/gu, "-").replace(/^[.-]+/, "") || "plan";
    let free = plain;
    for (let i = 2; taken.has(free.toLowerCase()); i++) free = `${plain}-${i}`;
    taken.add(free.toLowerCase());
    return free;
  });
}

async function standardInput(terminal: Terminal): Promise<string> {
  if (terminal.input === null) throw new UsageError("Nothing is piped into standard input.");
  return terminal.input();
}

async function fileText(name: string, terminal: Terminal): Promise<string> {
  try {
    const path = resolve(terminal.folder, name);
    const { size } = await stat(path);
    if (size > mostFile_bytes)
      throw new UsageError(`${name} has ${Math.round(size / 1e6)} MB, which is more than is read.`);
    return await readFile(path, "utf8");
  } catch (problem) {
    if (problem instanceof UsageError) throw problem;
    throw new UsageError(`${name} ${whyUnreadable(problem)}`);
  }
}

/** A sentence's end for an error of the file system. */
export function whyUnreadable(problem: unknown): string {
  const code = problem instanceof Error && "code" in problem ? problem.code : null;
  if (code === "ENOENT") return "does not exist.";
  if (code === "EISDIR") return "is a folder; name the files in it.";
  if (code === "EACCES" || code === "EPERM") return "may not be opened by you.";
  if (code === "ENOTDIR" || code === "EEXIST") return "leads through something that is not a folder.";
  return `cannot be used (${problem instanceof Error ? problem.message : String(problem)}).`;
}

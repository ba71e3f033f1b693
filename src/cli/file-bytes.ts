import { type FileHandle, open } from "node:fs/promises";
import { resolve } from "node:path";
import { whyUnreadable } from "./inputs.ts";
import { type Terminal, UsageError } from "./terminal.ts";

/** A file that is read in parts as they are asked for, and closed when the work is done: files of heights may not fit into memory. */
export async function withFileBytes<T>(
  name: string,
  terminal: Terminal,
  work: (file: { readonly size: number; slice(start: number, end: number): Part }) => Promise<T>,
): Promise<T> {
  let file: FileHandle;
  let size: number;
  try {
    file = await open(resolve(terminal.folder, name));
    const stat = await file.stat();
    size = stat.size;
    if (stat.isDirectory()) throw new UsageError(`${name} is a folder; name the files in it.`);
  } catch (problem) {
    if (problem instanceof UsageError) throw problem;
    throw new UsageError(`${name} ${whyUnreadable(problem)}`);
  }
  try {
    return await work({ size, slice: (start, end) => ({ arrayBuffer: () => part(file, start, Math.min(end, size)) }) });
  } finally {
    await file.close();
  }
}

interface Part {
  arrayBuffer(): Promise<ArrayBuffer>;
}

async function part(file: FileHandle, start: number, end: number): Promise<ArrayBuffer> {
  const bytes = new Uint8Array(Math.max(0, end - start));
  let filled = 0;
  while (filled < bytes.length) {
    const { bytesRead } = await file.read(bytes, filled, bytes.length - filled, start + filled);
    if (bytesRead === 0) break;
    filled += bytesRead;
  }
  return bytes.buffer.slice(0, filled);
}

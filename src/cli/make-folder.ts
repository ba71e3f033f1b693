import { mkdir, stat } from "node:fs/promises";
import { dirname } from "node:path";

/**
 * Makes a folder and those above it. One by one: where a folder can be neither found nor made (as under /proc), Node's own way of making
 * them all at once tries for ever.
 */
export async function makeFolder(path: string): Promise<void> {
  const missing: string[] = [];
  for (let folder = path; !(await isThere(folder)) && folder !== dirname(folder); folder = dirname(folder)) {
    missing.unshift(folder);
  }
  for (const folder of missing) await mkdir(folder);
  // Something that is there and is no folder says so itself.
  if (missing.length === 0) await mkdir(path, { recursive: true });
}

async function isThere(path: string): Promise<boolean> {
  try {
    await stat(path);
    return true;
  } catch {
    return false;
  }
}

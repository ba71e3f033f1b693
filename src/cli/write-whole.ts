import { rename, writeFile } from "node:fs/promises";

/** Writes a file that takes its name only when it is whole, so that nobody loads half of it. */
export async function writeWhole(file: string, text: string): Promise<void> {
  await writeFile(`${file}.part`, text);
  await rename(`${file}.part`, file);
}

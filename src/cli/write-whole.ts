import { open, rename, rm } from "node:fs/promises";

/** Writes a file that takes its name only when it is whole, so that nobody loads half of it; piece by piece as they are made. */
export async function writeWhole(file: string, content: string | Iterable<string | Uint8Array>): Promise<void> {
  const part = `${file}.part`;
  const handle = await open(part, "w");
  try {
    for (const chunk of typeof content === "string" ? [content] : content) {
      await (typeof chunk === "string" ? handle.writeFile(chunk) : handle.writeFile(chunk));
    }
    await handle.close();
    await rename(part, file);
  } catch (problem) {
    await handle.close().catch(() => undefined);
    await rm(part, { force: true });
    throw problem;
  }
}

import type { Chunk, OutFile } from "../core/index.ts";

/** What a file is made of, piece by piece; a database is one piece. */
export async function contentOf(file: OutFile): Promise<Iterable<Chunk>> {
  if (file.content.kind === "chunks") return file.content.chunks();
  const { databaseBytes } = await import("../readers/sqlite.ts");
  return [await databaseBytes(file)];
}

import type { Chunk, OutFile } from "../core/index.ts";

/** What a file is made of, piece by piece; SQLite is loaded only for a database. */
export async function contentOf({ name, mediaType, content }: OutFile): Promise<Iterable<Chunk>> {
  if (content.kind === "chunks") return content.chunks();
  const { databaseBytes } = await import("../readers/sqlite.ts");
  return [await databaseBytes({ name, mediaType, content })];
}

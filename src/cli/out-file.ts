import type { Chunk, OutFile } from "../core/index.ts";
import { UsageError } from "./terminal.ts";

/** What a file is made of, piece by piece. Throws a UsageError for a database, which takes a program of its own to write. */
export function contentOf({ name, content }: OutFile): Promise<Iterable<Chunk>> {
  if (content.kind === "chunks") return Promise.resolve(content.chunks());
  throw new UsageError(`${name} is a database, which is not written here.`);
}

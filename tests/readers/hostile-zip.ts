import { type Zippable, zipSync } from "fflate";

/** A zip archive of texts. */
export function zipOf(files: Readonly<Record<string, string | Uint8Array>>): Uint8Array {
  const encoder = new TextEncoder();
  const entries: Zippable = {};
  for (const [name, content] of Object.entries(files)) {
    entries[name] = [typeof content === "string" ? encoder.encode(content) : content, { mtime: "2026-11-26T06:00:00" }];
  }
  return zipSync(entries);
}

/** The first record of the list at the end of an archive, where a byte can be changed. */
export function firstRecord(archive: Uint8Array): { readonly view: DataView; readonly at: number } {
  const view = new DataView(archive.buffer, archive.byteOffset, archive.byteLength);
  for (let at = 0; at + 4 <= archive.length; at++) if (view.getUint32(at, true) === 0x02_01_4b_50) return { view, at };
  throw new Error("the archive has no list");
}

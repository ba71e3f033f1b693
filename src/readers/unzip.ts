import { failure, type Outcome } from "../core/outcome.ts";
import { brokenFile } from "./file-findings.ts";

/** One file inside an archive. */
export interface UnzippedFile {
  /** Without folders: where an archive wants a file to be is of no meaning here. */
  readonly name: string;
  /** As the archive says, for telling files of one name apart. */
  readonly path: string;
  readonly bytes: Uint8Array;
}

/** What is unpacked at most, whatever an archive claims. */
export const mostUnpacked_bytes = 200e6;
export const mostEntries = 2000;

/** The wanted files of a zip archive, in its order. Findings: `readers/broken-file`, `readers/archive-too-large`. */
export function unzipped(
  _bytes: Uint8Array,
  name: string,
  _isWanted: (path: string) => boolean,
): Outcome<readonly UnzippedFile[]> {
  return failure([brokenFile(name, "a zip archive", "it is not unpacked yet")]);
}

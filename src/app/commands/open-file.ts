import { failureOfReading } from "../failure-of-reading.ts";
import type { FileLink } from "../keeping/records.ts";
import type { Store } from "../store.ts";
import { openProject } from "./open-project.ts";

/** Opens a file of the person's own, chosen or dropped; with a link it is saved there again. */
export async function openFile(
  store: Store,
  file: Blob & { readonly name: string },
  link: FileLink | null = null,
): Promise<void> {
  try {
    openProject(store, await file.text(), file.name, { kind: "own", link });
  } catch {
    store.refusal.value = { file: file.name, findings: [failureOfReading("the browser was not allowed to read it")] };
  }
}

import { projectTooLarge } from "../../core/project/findings.ts";
import { mostProject_bytes } from "../../core/project/json-text.ts";
import { failureOfReading } from "../failure-of-reading.ts";
import type { FileLink } from "../keeping/records.ts";
import type { Store } from "../store.ts";
import { bringIn } from "./bring-in.ts";
import { openProject } from "./open-project.ts";

/** GeoJSON that can be no project, but may hold what belongs in one. */
const noProject = /^project\/(?:no-parcel|projected|swapped)$/;

/** Opens a file of the person's own, chosen or dropped; with a link it is saved there again. What is no project is brought in. */
export async function openFile(
  store: Store,
  file: Blob & { readonly name: string },
  link: FileLink | null = null,
): Promise<void> {
  if (/\.(?:geo)?json$/i.test(file.name) && file.size > mostProject_bytes) {
    // Not even asked for its text, which would fill the page's memory.
    store.refusal.value = { file: file.name, findings: [projectTooLarge(file.size, mostProject_bytes)] };
    return;
  }
  let isBrought = /\.(?!(?:geo)?json$)[^.]+$/i.test(file.name);
  try {
    if (!isBrought && !openProject(store, await file.text(), file.name, { kind: "own", link })) {
      isBrought = store.refusal.value?.findings.some(({ code }) => noProject.test(code)) === true;
    }
  } catch {
    store.refusal.value = { file: file.name, findings: [failureOfReading("the browser was not allowed to read it")] };
  }
  if (!isBrought) return;
  store.refusal.value = null;
  await bringIn(store, { kind: "file", file });
}

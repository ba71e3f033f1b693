import type { Brought } from "../bring-in/brought.ts";
import { failureOfReading } from "../failure-of-reading.ts";
import type { Store } from "../store.ts";
import { beginProject } from "./begin-project.ts";

/** Opens what brings in files of other formats and pasted corners; it is fetched with the first of them. */
export async function bringIn(store: Store, brought: Brought): Promise<void> {
  try {
    await (await import("../bring-in/open-bring-in.ts")).openBringIn(store, brought, beginProject);
  } catch {
    store.refusal.value = { file: brought.kind, findings: [failureOfReading("a part of this page is missing")] };
  }
}

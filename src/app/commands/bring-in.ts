import type { Brought } from "../bring-in/bring-in-dialog.tsx";
import { failureOfReading } from "../failure-of-reading.ts";
import type { Store } from "../store.ts";

/** Opens what brings in files of other formats and pasted corners; it is fetched with the first of them. */
export async function bringIn(store: Store, brought: Brought): Promise<void> {
  const parts = await import("../bring-in/open-bring-in.tsx").catch(() => null);
  if (parts) parts.openBringIn(store, brought);
  else
    store.refusal.value = {
      file: brought.kind,
      findings: [failureOfReading("a part of this page could not be loaded")],
    };
}

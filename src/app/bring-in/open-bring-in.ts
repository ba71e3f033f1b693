import type { Store } from "../store.ts";
import type { Brought } from "./brought.ts";
import type { BeginProject } from "./take-in.ts";

/** Fetches the dialog and opens it. A step of its own, so that the first load need not name all that the dialog is made of. */
export async function openBringIn(store: Store, brought: Brought, begin: BeginProject): Promise<void> {
  (await import("./show-bring-in.tsx")).showBringIn(store, brought, begin);
}

import type { Store } from "../store.ts";
import type { Keeper } from "./keeping-state.ts";

/** Loads what keeps projects and starts it; null, and said so, when it does not load. */
export async function loadKeeping(store: Store): Promise<Keeper | null> {
  try {
    const { startKeeping } = await import("./keeping.ts");
    return await startKeeping(store);
  } catch (error) {
    console.error(error);
    store.keeping.status.value = {
      kind: "not-kept",
      failure: {
        code: "other",
        what: "a part of the page could not be loaded",
        remedy: "Hand the project over as a file, then load the page again.",
      },
    };
    return null;
  } finally {
    store.keeping.hasLooked.value = true;
  }
}

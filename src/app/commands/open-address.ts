import { failureOfReading } from "../failure-of-reading.ts";
import type { Store } from "../store.ts";
import { openProject } from "./open-project.ts";

/** Opens a project that lies on the page's own server; any other address is refused. */
export async function openAddress(store: Store, address: string, page: URL): Promise<void> {
  const target = URL.canParse(address, page.href) ? new URL(address, page.href) : null;
  if (!target || target.origin !== page.origin) {
    store.refusal.value = { file: address, findings: [failureOfReading("it is not on this page's own server")] };
    return;
  }
  const file = decodeURIComponent(target.pathname.split("/").at(-1) ?? "") || address;
  try {
    const answer = await fetch(target);
    if (!answer.ok) throw new Error(`the server answered ${answer.status}`);
    openProject(store, await answer.text(), file);
  } catch (error) {
    const reason = error instanceof Error ? error.message : "it could not be read";
    store.refusal.value = { file, findings: [failureOfReading(reason)] };
  }
}

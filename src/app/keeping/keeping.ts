import { effect } from "@preact/signals";
import { beginProject } from "../commands/begin-project.ts";
import { current } from "../history.ts";
import type { Store } from "../store.ts";
import { copyName } from "./copy-name.ts";
import { failureOf } from "./failure.ts";
import { createIndexedShelf } from "./indexed-shelf.ts";
import { keepOpenProject } from "./keep-open-project.ts";
import type { Keeper } from "./keeping-state.ts";
import { listActions } from "./list-actions.ts";
import { idInAddress, showInAddress } from "./project-address.ts";
import { renamed } from "./project-texts.ts";
import { saveInFile } from "./save-in-file.ts";

/** The list is waited for this long; a browser that does not answer must not keep the page from being shown. */
const patience_ms = 1500;

/** Keeps what is on the page from now on, in this browser, and lets the page ask for kept projects. Done when the list of them is there. */
export async function startKeeping(store: Store): Promise<Keeper> {
  const { keeping } = store;
  const shelf = createIndexedShelf();
  let refreshing: ReturnType<typeof setTimeout> | undefined;
  /** The list is read a moment later, once for many changes, and only where it is shown already. */
  const refreshList = async (): Promise<void> => {
    clearTimeout(refreshing);
    refreshing = setTimeout(() => void list.refresh().catch(() => undefined), 150);
  };

  const open = keepOpenProject(store, { shelf, refreshList, onKept: () => void askToStay(store) });
  const list = listActions(store, {
    shelf,
    hold: open.hold,
    letGo: open.letGo,
    flush: () => open.flush(),
    tellList: () => open.tell({ kind: "list" }),
  });

  const keeper: Keeper = {
    ...list,
    ...saveInFile(store, open),
    retry: () => void open.flush(),
    workHere: open.workHere,
    backTo: open.backTo,
    makeCopy: async () => {
      const history = store.history.peek();
      if (!history) return;
      const { project } = current(history);
      const names = await shelf.list().catch(() => []);
      const name = copyName(
        project.name,
        names.map((each) => each.name),
      );
      beginProject(store, renamed(project, name), { kind: "own", link: null });
    },
  };

  let wasOpen = false;
  effect(() => {
    const [id, isOpen] = [keeping.id.value, store.opened.value > 0];
    if (isOpen || wasOpen) showInAddress(isOpen ? id : null);
    wasOpen = isOpen;
  });
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "hidden") void open.flush();
  });
  window.addEventListener("pagehide", () => void open.flush());
  window.addEventListener("beforeunload", (event) => {
    if (open.isAtRisk()) event.preventDefault();
  });
  window.addEventListener("hashchange", () => {
    const id = idInAddress(new URL(location.href));
    if (id !== null) void keeper.open(id);
    // A link within the page was followed; loading the page again is to open the project all the same.
    else if (keeping.id.peek() !== null) showInAddress(keeping.id.peek());
  });
  keeping.keeper.value = keeper;
  const listed = list.refresh().catch((error: unknown) => {
    const { what, remedy } = failureOf(error);
    keeping.message.value = { text: `Nothing can be kept: ${what}. ${remedy}`, actions: [] };
  });
  await Promise.race([listed, new Promise((resolve) => setTimeout(resolve, patience_ms))]);
  return keeper;
}

/** Some browsers ask the person: once is enough. */
let hasAsked = false;

/** Asks the browser not to clear what is kept when the disk runs low. */
async function askToStay({ keeping }: Store): Promise<void> {
  if (hasAsked) return;
  hasAsked = true;
  // Some browsers have it at secure addresses only.
  const { storage }: { readonly storage?: StorageManager } = navigator;
  const granted = storage ? await storage.persist().catch(() => false) : false;
  keeping.isPersistent.value = granted;
}

import type { Store } from "../store.ts";
import type { Opened } from "./opened.ts";
import { createProjectLock, type ProjectLock } from "./project-lock.ts";
import { createTabMessages, type TabMessage, type TabMessages } from "./tab-messages.ts";

/** How long the other tab may take to let go before it is taken for dead. */
const patience_ms = 4000;

export interface Turns extends TabMessages {
  /** The lock of a project; null where the browser has none. */
  lockOf(id: string): ProjectLock | null;
  /** Becomes the writing tab of the project on the page as soon as the other one is gone. */
  waitForTurn(): void;
  /** Asks the writing tab to let go, and takes the project from it when it does not answer. */
  workHere(): Promise<void>;
}

interface Parts {
  readonly onPage: () => Opened | null;
  /** Puts the newest kept state of the project on the page. */
  readonly showNewest: () => Promise<void>;
  readonly refreshList: () => Promise<void>;
}

/** One tab at a time writes a project; the others show it and may ask for it. */
export function takeTurns({ keeping }: Store, { onPage, showNewest, refreshList }: Parts): Turns {
  const locks = new Map<string, ProjectLock | null>();
  const idOnPage = (): string | null => onPage()?.session.record()?.id ?? null;

  const lockOf = (id: string): ProjectLock | null => {
    const known = locks.get(id);
    if (known !== undefined) return known;
    const made = createProjectLock(id, () => void becomeReader(id));
    locks.set(id, made);
    return made;
  };

  let stopWaiting: (() => void) | null = null;
  const waitForTurn = (): void => {
    stopWaiting?.();
    stopWaiting = null;
    const id = idOnPage();
    const lock = id === null ? null : lockOf(id);
    if (id === null || !lock || !keeping.isReading.peek()) return;
    stopWaiting = lock.wait(() => void becomeWriter(id));
  };
  const waitLater = (id: string, delay_ms: number): void => {
    setTimeout(() => {
      if (idOnPage() === id) waitForTurn();
    }, delay_ms);
  };

  const becomeWriter = async (id: string): Promise<void> => {
    stopWaiting = null;
    if (idOnPage() !== id) {
      lockOf(id)?.release();
      return;
    }
    await showNewest();
    keeping.isReading.value = false;
    keeping.isTakingOver.value = false;
    // It told that nothing can be changed here.
    keeping.message.value = null;
  };

  /** Another tab writes from now on; what this one has is kept first. */
  const becomeReader = async (id: string): Promise<void> => {
    const opened = onPage();
    if (!opened || idOnPage() !== id || keeping.isReading.peek()) return;
    const isKept = await opened.session.flush();
    // When the lock had been taken already, that may have made it a copy.
    if (idOnPage() !== id) return;
    if (!isKept) {
      const status = opened.session.status();
      messages.tell({ kind: "cannot", id, why: status.kind === "not-kept" ? status.failure.what : "it was busy" });
      return;
    }
    keeping.isReading.value = true;
    lockOf(id)?.release();
    waitLater(id, patience_ms / 4);
  };

  const hear = async (message: TabMessage): Promise<void> => {
    if (message.kind === "list" || message.kind === "kept") void refreshList();
    const opened = onPage();
    if (message.kind === "list" || !opened || idOnPage() !== message.id) return;
    const isReading = keeping.isReading.peek();
    switch (message.kind) {
      case "wish":
        if (!isReading) return becomeReader(message.id);
        // The one that asked goes first.
        stopWaiting?.();
        stopWaiting = null;
        return waitLater(message.id, patience_ms);
      case "cannot":
        if (!keeping.isTakingOver.peek()) return;
        keeping.isTakingOver.value = false;
        keeping.message.value = {
          text: `The other tab could not keep its last changes: ${message.why}. Save them there as a file first, or make a copy here.`,
          actions: [],
        };
        return;
      case "kept":
        if (isReading || opened.session.status().kind === "kept") return showNewest();
        // Both have changes: this one becomes a copy.
        await opened.session.flush();
    }
  };
  const messages = createTabMessages((message) => void hear(message));

  return {
    tell: messages.tell,
    lockOf,
    waitForTurn,
    workHere: async () => {
      const id = idOnPage();
      const lock = id === null ? null : lockOf(id);
      if (id === null || !lock || !keeping.isReading.peek()) return;
      keeping.isTakingOver.value = true;
      if (!stopWaiting) waitForTurn();
      messages.tell({ kind: "wish", id });
      await new Promise((resolve) => setTimeout(resolve, patience_ms));
      if (idOnPage() !== id || !keeping.isTakingOver.peek() || !keeping.isReading.peek()) return;
      stopWaiting?.();
      if (await lock.steal()) await becomeWriter(id);
    },
  };
}

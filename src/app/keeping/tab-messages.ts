/** What tabs tell each other. */
export type TabMessage =
  /** A revision of a project was kept. */
  | { readonly kind: "kept"; readonly id: string; readonly revision: number }
  /** A tab that reads wants to write. */
  | { readonly kind: "wish"; readonly id: string }
  /** The tab that writes can not let go: what it has is not kept. */
  | { readonly kind: "cannot"; readonly id: string; readonly why: string }
  /** The list of projects changed otherwise. */
  | { readonly kind: "list" };

export interface TabMessages {
  tell(message: TabMessage): void;
}

/** Messages between the tabs of this page; silent where the browser has no such channel. */
export function createTabMessages(onMessage: (message: TabMessage) => void): TabMessages {
  if (typeof BroadcastChannel === "undefined") return { tell: () => undefined };
  const channel = new BroadcastChannel("tautrow");
  channel.onmessage = ({ data }: MessageEvent<unknown>) => {
    const message = readMessage(data);
    if (message) onMessage(message);
  };
  return { tell: (message) => channel.postMessage(message) };
}

/** A message of another tab, which may be of another version of this page; null when it is none that is known. */
export function readMessage(data: unknown): TabMessage | null {
  if (typeof data !== "object" || data === null || !("kind" in data)) return null;
  if (data.kind === "list") return { kind: "list" };
  if (!("id" in data) || typeof data.id !== "string") return null;
  const { id } = data;
  if (data.kind === "wish") return { kind: "wish", id };
  if (data.kind === "kept" && "revision" in data && typeof data.revision === "number")
    return { kind: "kept", id, revision: data.revision };
  if (data.kind === "cannot" && "why" in data && typeof data.why === "string")
    return { kind: "cannot", id, why: data.why };
  return null;
}

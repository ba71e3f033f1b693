import type { FileLink } from "./records.ts";
import type { Session } from "./session.ts";

/** A project that is on the page, or was and is not kept yet. */
export interface Opened {
  readonly session: Session;
  link: FileLink | null;
}

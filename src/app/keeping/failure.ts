/** Why something could not be kept, and what to do about it, in words. */
export interface KeepingFailure {
  readonly code: "full" | "denied" | "newer" | "blocked" | "other";
  /** Continues "Not kept: …". */
  readonly what: string;
  readonly remedy: string;
}

/** An open that waits for another page of this program to let go. */
export class BlockedError extends Error {
  override readonly name = "BlockedError";
}

/** What a refusal by the browser's storage means for a person. */
export function failureOf(error: unknown): KeepingFailure {
  const { name, message } = named(error);
  switch (name) {
    case "QuotaExceededError":
      return {
        code: "full",
        what: "storage is full",
        remedy: "Save it as a file now. Then make room: empty the deleted projects, or free some of the disk.",
      };
    case "SecurityError":
    case "NotAllowedError":
    case "InvalidStateError":
    case "MissingStorageError":
      return {
        code: "denied",
        what: "this browser does not let the page store anything",
        remedy: "Save it as a file before you close the page, or allow site data for this address.",
      };
    case "VersionError":
      return {
        code: "newer",
        what: "a newer version of this program keeps the projects now",
        remedy: "Save it as a file, then load the page again.",
      };
    case "BlockedError":
      return {
        code: "blocked",
        what: "an older version of this page is open in another tab",
        remedy: "Close the other tab; what is here is kept then.",
      };
    default:
      return {
        code: "other",
        what: `the browser could not write it (${message || name})`,
        remedy: "Save it as a file now; keeping is tried again by itself.",
      };
  }
}

/** Thrown in place of what browsers do that leave the storage out altogether. */
export class MissingStorageError extends Error {
  override readonly name = "MissingStorageError";
}

function named(error: unknown): { readonly name: string; readonly message: string } {
  return error instanceof Error || error instanceof DOMException
    ? { name: error.name, message: error.message }
    : { name: "unknown", message: String(error) };
}

/** A text that was kept, and when. */
export interface Revision {
  readonly revision: number;
  /** Milliseconds since 1970. */
  readonly at: number;
}

/** What is known of a kept project without its text. */
export interface ProjectRecord {
  readonly id: string;
  readonly name: string;
  /** Last change, milliseconds since 1970. */
  readonly changed: number;
  /** SVG text. */
  readonly thumbnail: string;
  /** Counts up with every text that is kept. */
  readonly revision: number;
  /** The texts that are still there, oldest first; the newest is `revision`. */
  readonly revisions: readonly Revision[];
  /** When it was deleted; null while it is not. */
  readonly deleted: number | null;
  /** Version of the file format that the text is written in; null when it names none. */
  readonly formatVersion: number | null;
}

export interface TextRecord {
  readonly id: string;
  readonly revision: number;
  /** Null once it was given up; that there was such a revision is still known. */
  readonly text: string | null;
}

/** What a file looked like when it was last read or written here. */
export interface FileStamp {
  readonly lastModified: number;
  readonly size: number;
  /** SHA-256 of the text, or null where the browser has none. */
  readonly digest: string | null;
}

/** A file on the person's disk that a project is saved in. */
export interface FileLink {
  readonly handle: FileSystemFileHandle;
  readonly stamp: FileStamp | null;
}

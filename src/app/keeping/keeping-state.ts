import { type Signal, signal } from "@preact/signals";
import type { FileLink, ProjectRecord } from "./records.ts";
import type { SessionStatus } from "./session.ts";

/** Where a project on the page came from: that decides from when on it is kept. */
export type Source =
  /** A sample or an empty map: kept from its first change on. */
  | { readonly kind: "fresh" }
  /** A file of the person's own, or a copy: kept at once. */
  | { readonly kind: "own"; readonly link: FileLink | null }
  /** Kept already. */
  | { readonly kind: "kept"; readonly record: ProjectRecord; readonly link: FileLink | null }
  /** Left before its last changes could be kept, and taken up again. */
  | { readonly kind: "left"; readonly record: ProjectRecord | null; readonly link: FileLink | null };

/** Something the person is told, with what can be done about it. */
export interface Message {
  readonly text: string;
  readonly actions: readonly { readonly label: string; readonly run: () => void }[];
}

/** A kept project whose newest text can not be read. */
export interface Unreadable {
  readonly record: ProjectRecord;
  /** What is there of the newest text. */
  readonly text: string | null;
  readonly reason: string;
  /** The youngest older text that can be read. */
  readonly earlier: { readonly at: number; readonly text: string } | null;
}

/** What the keeping of projects can be asked for, once it is loaded. */
export interface Keeper {
  /** Tries again to keep what could not be kept. */
  retry(): void;
  /** Takes the project over from the other tab that has it. */
  workHere(): Promise<void>;
  /** Goes on with a copy; the project itself stays as it is. */
  makeCopy(): Promise<void>;
  open(id: string): Promise<void>;
  openEarlier(unreadable: Unreadable): Promise<void>;
  rename(id: string, name: string): Promise<void>;
  duplicate(id: string): Promise<void>;
  remove(id: string): Promise<void>;
  bringBack(id: string): Promise<void>;
  empty(): Promise<void>;
  /** Reads the list anew. */
  refresh(): Promise<void>;
  /** Saves into the file that belongs to the project, or asks for one. */
  save(): Promise<void>;
  saveAs(): Promise<void>;
  /** Lets the person choose a file and opens it; false where the browser has no such window. */
  chooseFile(): Promise<boolean>;
  /** Back to a project that was left before it could be kept. */
  backTo(name: string): void;
}

/** What the page knows about the keeping of its project; signals only. */
export interface KeepingState {
  readonly source: Signal<Source>;
  readonly status: Signal<SessionStatus>;
  /** Id of the project on the page; null until it is kept. */
  readonly id: Signal<string | null>;
  /** True while another tab works on the project and this one shows it. */
  readonly isReading: Signal<boolean>;
  /** True while the other tab is asked to let go. */
  readonly isTakingOver: Signal<boolean>;
  /** True once it is known whether there are kept projects, or that this can not be known. */
  readonly hasLooked: Signal<boolean>;
  /** Null while it was not read. */
  readonly list: Signal<readonly ProjectRecord[] | null>;
  readonly message: Signal<Message | null>;
  readonly unreadable: Signal<Unreadable | null>;
  /** Name of the file that the project is saved in. */
  readonly fileName: Signal<string | null>;
  /** Names of projects that were left before they could be kept. */
  readonly left: Signal<readonly string[]>;
  /** Whether the browser promised not to clear what is kept; null while it was not asked. */
  readonly isPersistent: Signal<boolean | null>;
  readonly keeper: Signal<Keeper | null>;
}

/** A state in which nothing is kept and nothing is known yet. */
export function createKeepingState(): KeepingState {
  return {
    source: signal<Source>({ kind: "fresh" }),
    status: signal<SessionStatus>({ kind: "untouched" }),
    id: signal<string | null>(null),
    isReading: signal(false),
    isTakingOver: signal(false),
    hasLooked: signal(false),
    list: signal<readonly ProjectRecord[] | null>(null),
    message: signal<Message | null>(null),
    unreadable: signal<Unreadable | null>(null),
    fileName: signal<string | null>(null),
    left: signal<readonly string[]>([]),
    isPersistent: signal<boolean | null>(null),
    keeper: signal<Keeper | null>(null),
  };
}

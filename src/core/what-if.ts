import type { Json } from "./project/project.ts";

/** A change of mind worth looking at: what it is called and which settings it changes. */
export interface WhatIf {
  /** How it is asked for on the command line: "loop-at-the-end". */
  readonly id: string;
  readonly name: string;
  readonly edits: readonly (readonly [path: string, value: Json])[];
}

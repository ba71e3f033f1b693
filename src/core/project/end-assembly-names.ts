import type { EndAssemblyKind } from "./project.ts";

/** What the ends of a block's rows are called within a sentence. */
export const endAssemblyNames: Readonly<Record<EndAssemblyKind, string>> = {
  vertical: "upright end posts with tie-backs",
  leaning: "leaning end posts with tie-backs",
  "h-brace": "H-braces at the ends",
  "slant-brace": "slant braces at the ends",
  "inside-brace": "inside braces at the ends",
  "buried-anchor": "end posts tied to buried anchors",
  single: "end posts that stand alone",
};

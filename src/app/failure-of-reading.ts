import { type Finding, say } from "../core/finding.ts";

/** The finding for a file that never reached the core, because the browser could not read it. */
export function failureOfReading(reason: string): Finding {
  return {
    code: "app/file-not-read",
    severity: "error",
    at: null,
    feature: null,
    message: say`The file could not be read: ${reason}.`,
    reason: say`Without its text there is nothing to plan.`,
    remedy: say`Choose the file again, or open another.`,
  };
}

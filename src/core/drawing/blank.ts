import { isJsonObject } from "../project/json-value.ts";
import type { Project } from "../project/project.ts";

/**
 * True while a project of our own making has no parcel yet: its settings are there, other things may be drawn, and that there is no
 * parcel is all that keeps it from being planned. A file that lost its parcel, or never was a project, is not blank.
 */
export function isBlank({ document, findings }: Project): boolean {
  const errors = findings.filter(({ severity }) => severity === "error");
  return (
    isJsonObject(document.tautrow) && errors.length > 0 && errors.every(({ code }) => code === "project/no-parcel")
  );
}

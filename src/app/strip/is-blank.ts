import type { Project } from "../../core/project/project.ts";

/** True while there is no parcel and nothing is wrong but that: a beginning, not a mistake. */
export function isBlank({ parcels, findings }: Project): boolean {
  return (
    parcels.length === 0 && findings.every(({ severity, code }) => severity !== "error" || code === "project/no-parcel")
  );
}

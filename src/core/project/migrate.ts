import type { Finding } from "../finding.ts";
import { badSetting, newerVersion } from "./findings.ts";
import { member, shown } from "./json-value.ts";
import type { JsonObject } from "./project.ts";

/** The project format this program writes; version 1 is the first, so there is nothing yet to bring up to it. */
export const formatVersion = 1;

/**
 * The settings to read, in the terms of the current format; the document itself keeps its own version until it is edited.
 * Settings without a version count as the current one. Settings of a newer format are not used at all: they could mean something else.
 * Findings: `project/newer-version`, `project/bad-setting`.
 */
export function migrate(settings: JsonObject): {
  readonly settings: JsonObject;
  readonly findings: readonly Finding[];
} {
  const version = member(settings, "version");
  if (version === undefined || version === null || version === formatVersion) return { settings, findings: [] };
  if (typeof version === "number" && version > formatVersion) {
    return { settings: {}, findings: [newerVersion(version, formatVersion)] };
  }
  return { settings, findings: [badSetting("version", shown(version), `it must be ${formatVersion}`)] };
}

import * as z from "zod/mini";
import { type Finding, type Quantity, quantity, say } from "../finding.ts";
import type { QuantityKind } from "../units.ts";
import { badSetting, settingOutOfRange, unknownSetting, type Where } from "./findings.ts";
import { isJsonObject, member, shown } from "./json-value.ts";
import { nearestName } from "./nearest-name.ts";
import type { Json, JsonObject } from "./project.ts";
import type { Section } from "./schema-parts.ts";

export interface SectionReading<T> {
  readonly stated: T;
  readonly findings: readonly Finding[];
}

/**
 * Reads one section of the settings, or the properties of a feature. A member that is not understood is left out with a finding, the
 * others stay; null counts as not stated. `others` are members that are known but read elsewhere; null says that any other may stand.
 * Findings: `project/bad-setting`, `project/setting-out-of-range`, `project/unknown-setting`.
 */
export function readSection<T>(
  { members, schema }: Section<T>,
  value: Json | undefined,
  path: string,
  others: readonly string[] | null,
  where?: Where,
): SectionReading<T> {
  const findings: Finding[] = [];
  let input: JsonObject = {};
  if (isJsonObject(value)) input = value;
  else if (value !== undefined && value !== null) findings.push(badSetting(path, shown(value), "it must be an object"));
  const good: Record<string, unknown> = {};
  for (const name of Object.keys(input)) {
    const stated = member(input, name);
    if (stated === null) continue;
    const at = joined(path, name);
    if (members.includes(name)) good[name] = stated;
    else if (others !== null && !others.includes(name)) {
      const nearest = nearestName(name, [...members, ...others]);
      findings.push(unknownSetting(at, nearest === null ? null : joined(path, nearest)));
    }
  }
  const result = z.safeParse(schema, good);
  if (result.success) return { stated: result.data, findings };
  for (const issue of firstByMember(result.error.issues)) {
    findings.push(settingFault(issue, input, path, where));
    delete good[String(issue.path[0])];
  }
  return { stated: z.parse(schema, good), findings };
}

/** One issue a member is enough: the first. */
function firstByMember(issues: readonly z.core.$ZodIssue[]): readonly z.core.$ZodIssue[] {
  const seen = new Set<unknown>();
  return issues.filter(({ path: [name] }) => !seen.has(name) && seen.add(name));
}

function settingFault(issue: z.core.$ZodIssue, input: JsonObject, path: string, where: Where | undefined): Finding {
  const at = [path, ...issue.path.map(String)].filter((part) => part !== "").join(".");
  const limits = limitsOf(issue);
  if (limits !== null) {
    const [value, from, to] = limits;
    return settingOutOfRange(at, [value], say`from ${from} to ${to}`, where);
  }
  const found = issue.path.reduce<Json | undefined>(within, input);
  return badSetting(at, found === undefined ? "not stated" : shown(found), issue.message, where);
}

function within(value: Json | undefined, name: PropertyKey): Json | undefined {
  if (Array.isArray(value)) return value[Number(name)];
  return isJsonObject(value) ? member(value, String(name)) : undefined;
}

/** The value and the limits it is out of, also when it stands in one of several forms a member may take. */
function limitsOf(issue: z.core.$ZodIssue): readonly [value: Quantity, min: Quantity, max: Quantity] | null {
  if (issue.code === "invalid_union") {
    for (const inner of issue.errors.flat()) {
      const found = inner.path.length === 0 || inner.code === "custom" ? limitsOf(inner) : null;
      if (found !== null) return found;
    }
    return null;
  }
  if (issue.code !== "custom") return null;
  const read = z.safeParse(limitsSchema, issue.params);
  if (!read.success) return null;
  const { kind, value, min, max } = read.data;
  return [quantity(kind, value), quantity(kind, min), quantity(kind, max)];
}

const kinds: readonly [QuantityKind, ...QuantityKind[]] = [
  "length",
  "area",
  "diameter",
  "angle",
  "flow",
  "volume",
  "mass",
  "ratio",
  "pressure",
  "time",
  "force",
  "temperature",
  "earth",
];
const limitsSchema = z.object({ kind: z.enum(kinds), value: z.number(), min: z.number(), max: z.number() });

function joined(path: string, name: string): string {
  return path === "" ? name : `${path}.${name}`;
}

import { type FoundThing, type Role, roles } from "../core/index.ts";
import { UsageError } from "./terminal.ts";

/** What --role says: what it is about (null: everything), and the role, null to leave it out. */
export interface RoleRule {
  readonly said: string;
  readonly of: string | null;
  readonly role: Role | null;
}

/** Reads "Trees=obstacle", "points=none" and "parcel". Throws a UsageError for a role that is none. */
export function roleRules(given: readonly string[]): readonly RoleRule[] {
  return given.map((said) => {
    const at = said.lastIndexOf("=");
    const [of, name] = [at < 0 ? null : said.slice(0, at).trim().toLowerCase(), said.slice(at + 1).trim()];
    const role = roles.find((each) => each === name) ?? null;
    if (role === null && name !== "none") {
      throw new UsageError(`--role ${said}: "${name}" is no role; there is ${roles.join(", ")}, and none.`);
    }
    return { said, of, role };
  });
}

/** The role that the last fitting rule gives a thing; undefined where no rule is about it. By name, by layer, or by "points", "lines", "areas". */
export function ruledRole(rules: readonly RoleRule[], thing: FoundThing): Role | null | undefined {
  return rules.findLast((rule) => isAbout(rule, thing))?.role;
}

/** Is a rule about a thing? */
export function isAbout({ of }: RoleRule, thing: FoundThing): boolean {
  if (of === null) return true;
  const called = [thing.name, thing.layer].map((name) => name?.trim().toLowerCase());
  return called.includes(of) || of === `${kindOf(thing)}s`;
}

/** "point", "line" or "area"; "thing" for a mixture. */
export function kindOf({ geometry }: FoundThing): "point" | "line" | "area" | "thing" {
  if (/Point$/.test(geometry.type)) return "point";
  if (/LineString$/.test(geometry.type)) return "line";
  return /Polygon$/.test(geometry.type) ? "area" : "thing";
}

import { member, shown } from "./json-value.ts";
import { nearestName } from "./nearest-name.ts";
import { type JsonObject, type Role, roles } from "./project.ts";

export type RoleReading =
  | { readonly kind: "known"; readonly role: Role }
  | { readonly kind: "none" }
  | { readonly kind: "unknown"; readonly written: string; readonly nearest: string | null };

/** The role that a feature's properties state. */
export function roleOf(properties: JsonObject): RoleReading {
  const stated = member(properties, "role");
  if (stated === undefined || stated === null || stated === "") return { kind: "none" };
  const role = roles.find((each) => each === stated);
  if (role !== undefined) return { kind: "known", role };
  const nearest = typeof stated === "string" ? nearestName(stated, roles) : null;
  return { kind: "unknown", written: shown(stated), nearest };
}

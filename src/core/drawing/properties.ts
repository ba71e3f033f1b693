import { failure, type Outcome, success } from "../outcome.ts";
import { featureSections } from "../project/feature-properties.ts";
import { badSetting, type Where } from "../project/findings.ts";
import { shown, withMember, withoutMember } from "../project/json-value.ts";
import { type FeatureKey, type Json, type JsonObject, type Role, roles } from "../project/project.ts";
import { readSection } from "../project/read-section.ts";

/**
 * Properties with one of them set, or taken out when the value is null; checked as reading the file would, and kept as typed.
 * Findings when it is refused: `project/bad-setting`, `project/setting-out-of-range`.
 */
export function withProperty(
  properties: JsonObject,
  role: Role | null,
  name: string,
  value: Json | null,
  feature: FeatureKey,
): Outcome<JsonObject> {
  if (value === null) return success(withoutMember(properties, name));
  const where: Where = { feature, at: null };
  if (name === "role" && roles.every((each) => each !== value)) {
    return failure([badSetting(name, shown(value), `it must be one of ${roles.join(", ")}`, where)]);
  }
  if (name === "name" && typeof value !== "string" && typeof value !== "number") {
    return failure([badSetting(name, shown(value), "it must be text", where)]);
  }
  if (role !== null) {
    const { findings } = readSection(featureSections[role], { [name]: value }, "", null, where);
    if (findings.length > 0) return failure(findings);
  }
  return success(withMember(properties, name, value));
}

/** The property of that name in every one that is given, checked one after another. */
export function withAllProperties(
  properties: JsonObject,
  role: Role,
  given: JsonObject,
  feature: FeatureKey,
): Outcome<JsonObject> {
  let all = properties;
  for (const [name, value] of Object.entries(given)) {
    const set = withProperty(all, role, name, value, feature);
    if (!set.ok) return set;
    all = set.value;
  }
  return success(all);
}

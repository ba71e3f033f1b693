import type { LonLat } from "../plane/coordinate.ts";
import { frameReach_m } from "../plane/frame.ts";
import { apart_m } from "../project/extent.ts";
import { withMember } from "../project/json-value.ts";
import type { JsonObject, Project, Role } from "../project/project.ts";
import * as findings from "./found-findings.ts";
import { foundGeometry } from "./found-geometry.ts";
import { hasHeights, saidHeight } from "./found-heights.ts";
import { foundProperties } from "./found-properties.ts";
import type { Remark } from "./found-remarks.ts";
import { foundShape, positionsIn, strayPosition } from "./found-shape.ts";
import type { FoundThing } from "./found-thing.ts";
import { placeOf } from "./position.ts";

/** A found thing as features without ids, none when it cannot be taken, with what is to be said of it. */
export interface FoundFeatures {
  readonly features: readonly { readonly properties: JsonObject; readonly geometry: JsonObject }[];
  readonly remarks: readonly Remark[];
}

/**
 * A found thing in a role, as features of a project that lies around `middle`. Findings among the remarks: `drawing/found-not-a-place`,
 * `drawing/found-far-away`, `drawing/found-without-height`, `drawing/found-too-few-corners`, `drawing/found-wrong-shape`,
 * `drawing/found-closed`, `drawing/found-part-left-out`, `drawing/found-heights-left-out`, `drawing/found-heights-as-metres`,
 * `drawing/found-property-left-out`.
 */
export function foundFeatures(thing: FoundThing, role: Role, project: Project, middle: LonLat): FoundFeatures {
  const shape = foundShape(thing.geometry);
  const refused = (remark: Omit<Remark, "thing">): FoundFeatures => ({ features: [], remarks: [{ thing, ...remark }] });
  if (strayPosition(shape) !== null) return refused({ cause: "stray", finding: findings.foundNotAPlace });
  const away_m = positionsIn(shape).reduce((most, position) => Math.max(most, apart_m(middle, placeOf(position))), 0);
  if (away_m > frameReach_m) {
    return refused({
      cause: "far",
      most_m: away_m,
      finding: (told, most_m) => findings.foundFarAway(told, most_m, frameReach_m),
    });
  }
  const said = role === "elevation" && !hasHeights(thing) ? saidHeight(thing) : null;
  const { geometries, isTooShort, leftOut, closed, losesHeights } = foundGeometry(shape, role);
  if (isTooShort || geometries.length === 0) {
    const short = { cause: `short ${role}`, finding: (told: findings.Told) => findings.foundTooFewCorners(told, role) };
    const wrong = { cause: `shape ${role}`, finding: (told: findings.Told) => findings.foundWrongShape(told, role) };
    return refused(isTooShort ? short : wrong);
  }
  if (role === "elevation" && said === null && !hasHeights(thing)) {
    return refused({ cause: "no height", finding: findings.foundWithoutHeight });
  }
  const { properties, leftOut: lost } = foundProperties(thing, role, project);
  const measured = said === null ? properties : withMember(properties, "height", said.height_m);
  const remarks: readonly (Omit<Remark, "thing"> | null)[] = [
    closed.length > 0
      ? { cause: "closed", most_m: longest_m(closed), finding: (told, most_m) => findings.foundClosed(told, most_m) }
      : null,
    leftOut.length > 0
      ? {
          cause: `parts ${leftOut.join(" ")}`,
          finding: (told) => findings.foundPartLeftOut(told, leftOut.join(" and ")),
        }
      : null,
    losesHeights ? { cause: "heights", finding: findings.foundHeightsLeftOut } : null,
    said?.hasUnit === false ? { cause: "metres", finding: findings.foundHeightsAsMetres } : null,
    lost.length > 0
      ? {
          cause: "properties",
          words: lost,
          finding: (told, _, words) => findings.foundPropertyLeftOut(told, words),
        }
      : null,
  ];
  return {
    features: geometries.map((geometry) => ({ properties: measured, geometry })),
    remarks: remarks.flatMap((remark) => (remark === null ? [] : [{ thing, ...remark }])),
  };
}

function longest_m(gaps: ReturnType<typeof foundGeometry>["closed"]): number {
  return gaps.reduce((most, [from, to]) => Math.max(most, apart_m(placeOf(from), placeOf(to))), 0);
}

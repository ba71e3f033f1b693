import { type Project, type Role, roles } from "../project/project.ts";
import { hasHeights, heightIn, saidHeight } from "./found-heights.ts";
import { hintOf } from "./found-hints.ts";
import {
  couldClose,
  type FoundShape,
  foundShape,
  isClosedLine,
  isInside,
  kindsIn,
  positionsIn,
} from "./found-shape.ts";
import type { FoundThing } from "./found-thing.ts";
import { placeOf } from "./position.ts";
import { type DrawnKind, shapesOf } from "./shape.ts";

/** Of more outlines than this most are a whole county's: the person picks. */
const mostParcels = 200;

/** The roles that a thing of that shape can play; spot heights only where it has heights. */
export function possibleRoles(thing: FoundThing): readonly Role[] {
  const shape = foundShape(thing.geometry);
  const kinds = fitting(shape);
  const isMeasured = shape.areas.length === 0 && (hasHeights(thing) || saidHeight(thing) !== null);
  return roles.filter((role) =>
    role === "elevation" ? isMeasured : shapesOf[role].some((kind) => kinds.includes(kind)),
  );
}

/**
 * The roles that found things most likely play, one for each: by its own role or kind (a plan that was handed over comes back), its layer,
 * its name and its shape. null: none can be told, or it is what every plan works out anew. Of areas about which nothing is said those
 * that lie in no other one are parcels, while there is no parcel.
 */
export function likelyRoles(things: readonly FoundThing[], project: Project | null): readonly (Role | null)[] {
  const read = things.map((thing) => {
    const shape = foundShape(thing.geometry);
    return { thing, shape, hint: hintOf(thing, fitting(shape)) };
  });
  const said = read.map(({ thing, hint }) =>
    hint === null || hint === "worked-out" ? null : possibleRoles(thing).includes(hint) ? hint : null,
  );
  const needsParcel = (project?.parcels ?? []).length === 0 && !said.includes("parcel");
  // Some formats write the height 0 for "no height": one that is not 0 is needed to believe them.
  const isLevelled = read.some(({ shape }) => shape.points.some((position) => (heightIn(position) ?? 0) !== 0));
  const open = read.flatMap(({ shape, hint }) => (hint === null && isOutline(shape) ? [shape] : []));
  const mayBeParcels = needsParcel && open.length <= mostParcels;
  return read.map(({ thing, shape, hint }, i) => {
    if (hint !== null) return said[i] ?? null;
    if (isOutline(shape)) return mayBeParcels && !liesInAnother(shape, open) ? "parcel" : null;
    const isPoint = shape.points.length > 0 && shape.lines.length === 0;
    return isPoint && ((isLevelled && hasHeights(thing)) || saidHeight(thing, true) !== null) ? "elevation" : null;
  });
}

/** Is it something that every plan works out by itself, such as a vine or a post? */
export function isWorkedOut(thing: FoundThing): boolean {
  return hintOf(thing, fitting(foundShape(thing.geometry))) === "worked-out";
}

/** Kinds of a shape, where lines that could be closed count as areas too. */
function fitting(shape: FoundShape): readonly DrawnKind[] {
  const kinds = kindsIn(shape);
  return shape.lines.some(couldClose) && !kinds.includes("area") ? ["area", ...kinds] : kinds;
}

function isOutline({ points, lines, areas }: FoundShape): boolean {
  return areas.length > 0 || (points.length === 0 && lines.length > 0 && lines.every(isClosedLine));
}

function liesInAnother(shape: FoundShape, all: readonly FoundShape[]): boolean {
  const [first] = positionsIn(shape);
  const place = placeOf(first);
  return all.some(
    (other) =>
      other !== shape &&
      [...other.areas.map(([outer]) => outer ?? []), ...other.lines].some((ring) => isInside(place, ring)),
  );
}

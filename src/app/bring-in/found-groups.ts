import { foundShape, kindsIn } from "../../core/drawing/found-shape.ts";
import { measurePath } from "../../core/drawing/measure.ts";
import { placeOf } from "../../core/drawing/position.ts";
import type { DrawnKind } from "../../core/drawing/shape.ts";
import type { Frame } from "../../core/plane/frame.ts";
import { formatQuantity, type UnitSystem } from "../../core/units.ts";
import type { FoundFeature } from "../../readers/reading.ts";
import { count } from "../strip/count.ts";

/** Things of one layer and one kind of shape. */
export interface FoundGroup {
  readonly id: string;
  readonly layer: string | null;
  readonly kind: DrawnKind;
  /** Numbers of its things among all of the file. */
  readonly members: readonly number[];
}

/** More things than this are taken or left out together. */
export const mostListed = 40;

/** The things of a file by layer and shape, in the file's order. */
export function groupsOf(features: readonly FoundFeature[]): readonly FoundGroup[] {
  const groups = new Map<string, FoundGroup & { readonly members: number[] }>();
  for (const [i, { layer, geometry }] of features.entries()) {
    const kind = kindsIn(foundShape(geometry))[0] ?? "point";
    const id = JSON.stringify([layer, kind]);
    const known = groups.get(id);
    if (known) known.members.push(i);
    else groups.set(id, { id, layer, kind, members: [i] });
  }
  return [...groups.values()];
}

/** "12 points". */
export function countOf({ kind, members }: FoundGroup): string {
  return count(members.length, kind);
}

/** How large a thing is: the area of areas, the length of lines, how many points it has; empty for one point. */
export function sizeOf({ geometry }: FoundFeature, frame: Frame, units: UnitSystem): string {
  const { points, lines, areas } = foundShape(geometry);
  if (areas.length > 0) {
    const area_m2 = areas.reduce((sum, rings) => {
      const each = rings.map((ring) => measurePath(frame, ring.slice(0, -1).map(placeOf), true).area_m2 ?? 0);
      return sum + each.reduce((left, hole, r) => (r === 0 ? hole : left - hole), 0);
    }, 0);
    return formatQuantity("area", area_m2, units);
  }
  if (lines.length > 0) {
    const length_m = lines.reduce((sum, line) => sum + measurePath(frame, line.map(placeOf), false).length_m, 0);
    const told = formatQuantity("length", length_m, units, 1);
    return lines.length > 1 ? `${count(lines.length, "line")}, ${told}` : told;
  }
  return points.length > 1 ? count(points.length, "point") : "";
}

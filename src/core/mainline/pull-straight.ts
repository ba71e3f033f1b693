import type { PlanePoint } from "../plane/coordinate.ts";
import type { Clearance, Exempt } from "./clearance.ts";

/**
 * A way between two places with the bends left out that it does not need: from each place on to the farthest one that there is a straight
 * way to with all the room that is wanted. `exempt` holds for what begins at the first place.
 */
export function pulledStraight(
  way: readonly PlanePoint[],
  { isRoomy }: Pick<Clearance, "isRoomy">,
  exempt: Exempt | undefined,
): readonly PlanePoint[] {
  const [first] = way;
  if (first === undefined) return way;
  const pulled = [first];
  for (let at = 0; at + 1 < way.length; ) {
    const from = way[at] ?? first;
    let next = at + 1;
    for (let far = way.length - 1; far > next; far--) {
      const to = way[far] ?? first;
      if (isRoomy(from[0], from[1], to[0], to[1], at === 0 ? exempt : undefined)) next = far;
    }
    const to = way[next];
    if (to !== undefined) pulled.push(to);
    at = next;
  }
  return pulled;
}

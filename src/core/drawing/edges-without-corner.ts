import type { FeatureKey, Json, Project } from "../project/project.ts";
import { bearingEdges } from "./bearing-edges.ts";
import { type Cover, coversOf, coversSide, inLineOrder } from "./covers.ts";
import { type CornerRef, type EditedThing, editedThing } from "./drawn.ts";
import { withoutHeight } from "./position.ts";

/** What becomes of one line of an edge feature: the lists of positions in its place; none when it goes. */
export interface LineChange {
  readonly key: FeatureKey;
  readonly line: number;
  readonly lists: readonly (readonly Json[])[];
}

interface Ending extends Cover {
  readonly setback_m: number | null;
  readonly saysMore: boolean;
  /** The line comes to the corner with its last position, in the order of the outline; else it begins there. */
  readonly isBefore: boolean;
}

/**
 * How edge features follow when a corner of an outline goes and the two sides at it become one. A line that passes the corner loses it. A
 * line that ends at it runs on to the next corner, so that the side keeps its setback. Where two setbacks meet, the larger runs on and
 * the other draws back; two that are equal are joined, unless one of them says something else as well.
 */
export function edgesWithoutCorner(
  project: Project,
  thing: EditedThing,
  { path, corner }: CornerRef,
): readonly LineChange[] {
  const outline = thing.geometry[path]?.positions ?? [];
  const n = outline.length;
  const [before, after] = [(corner + n - 1) % n, (corner + 1) % n];
  const covers = coversOf(project, thing, path);
  const named = bearingEdges(project);
  const passing = covers.filter((cover) => coversSide(cover, before, n) && coversSide(cover, corner, n));
  const ending = covers.flatMap((cover): Ending[] => {
    const isBefore = coversSide(cover, before, n);
    if (isBefore === coversSide(cover, corner, n)) return [];
    const { key } = cover;
    const setback_m = project.edges.find((edge) => edge.key === key)?.setback_m ?? null;
    return [{ ...cover, isBefore, setback_m, saysMore: named.has(key) || saysMore(editedThing(project, key)) }];
  });
  const changes = passing.map((cover) => line(cover, passed(cover, corner, n)));
  const [one, other] = [true, false].map((isBefore) =>
    ending.findLast((each) => each.isBefore === isBefore && each.setback_m !== null),
  );
  const joined = one === undefined || other === undefined ? null : join(one, other, n);
  const staying = one === undefined || other === undefined ? (one ?? other) : inForce(one, other);
  for (const cover of ending) {
    if (joined !== null && (cover === one || cover === other)) continue;
    const runsOn = cover.setback_m === null || (joined === null && cover === staying);
    const beyond = cover.isBefore ? outline[after] : outline[before];
    changes.push(line(cover, runsOn ? extended(cover, withoutHeight(beyond)) : shortened(cover)));
  }
  return joined === null ? changes : [...changes, ...joined];
}

/** Does the edge feature say anything beside a setback: a name, a taped length, something of another program? */
function saysMore(edge: EditedThing | null): boolean {
  return Object.keys(edge?.properties ?? {}).some((name) => name !== "role" && name !== "setback");
}

function line(cover: Cover, positions: readonly Json[]): LineChange {
  const { key, line: number } = cover;
  return { key, line: number, lists: positions.length < 2 ? [] : [inLineOrder(cover, positions)] };
}

/** The positions without that of a corner the line passes; a line all around begins and ends at the next one. */
function passed({ first, sides, positions }: Cover, corner: number, n: number): readonly Json[] {
  if (sides === n && first === corner) {
    const inner = positions.slice(1, -1);
    return [...inner, ...inner.slice(0, 1)];
  }
  return positions.filter((_, k) => (first + k) % n !== corner);
}

function extended({ isBefore, positions }: Ending, beyond: Json): readonly Json[] {
  return isBefore ? [...positions.slice(0, -1), beyond] : [beyond, ...positions.slice(1)];
}

function shortened({ isBefore, positions }: Ending): readonly Json[] {
  return isBefore ? positions.slice(0, -1) : positions.slice(1);
}

/** Both lines as one, when they say the same setback and nothing else; null when they are to stay two. */
function join(one: Ending, other: Ending, n: number): readonly LineChange[] | null {
  const isAllAround = one.sides + other.sides > n;
  const isOne = one.key === other.key && one.line === other.line;
  if (isAllAround || isOne || one.setback_m !== other.setback_m || one.saysMore || other.saysMore) return null;
  return [line(one, [...one.positions.slice(0, -1), ...other.positions.slice(1)]), line(other, [])];
}

/** Of two setbacks the larger; of equal ones that of the line that says something else as well. */
function inForce(one: Ending, other: Ending): Ending {
  const [left, right] = [Number(one.setback_m), Number(other.setback_m)];
  if (left !== right) return left > right ? one : other;
  return other.saysMore && !one.saysMore ? other : one;
}

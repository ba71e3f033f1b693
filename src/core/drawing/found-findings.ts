import { type Finding, listed, type Phrase, quantity, say } from "../finding.ts";
import type { LonLat } from "../plane/coordinate.ts";
import type { Role } from "../project/project.ts";
import { thingKind } from "./drawn.ts";
import { shapesOf, shapeWords } from "./shape.ts";

/** Found things that one finding is about: what they are called, how many they are, and the place of the first. */
export interface Told {
  readonly names: readonly string[];
  readonly count: number;
  readonly at: LonLat | null;
}

/** Things whose shape cannot play the chosen role. */
export function foundWrongShape(told: Told, role: Role): Finding {
  const wanted = shapesOf[role].map((kind) => shapeWords[kind]).join(" or ");
  return finding(
    "drawing/found-wrong-shape",
    "warning",
    told,
    say`${listed(told.names)} cannot be taken as ${kindOf(role)}, which must be ${wanted}.`,
    say`Drawn in another shape it would stand in the project, but nothing would come of it.`,
    say`Choose another role, or leave it out.`,
  );
}

/** Things with positions that are none on the globe. */
export function foundNotAPlace(told: Told): Finding {
  return finding(
    "drawing/found-not-a-place",
    "warning",
    told,
    say`${listed(told.names)} cannot be taken: there are positions in ${it(told)} that are no places on the globe.`,
    say`A latitude goes from -90 to 90 degrees, and a longitude from -180 to 180.`,
    say`State the coordinate system of the file, or have it written in longitude and latitude.`,
  );
}

/** Outlines and lines with too few different places. */
export function foundTooFewCorners(told: Told, role: Role): Finding {
  return finding(
    "drawing/found-too-few-corners",
    "warning",
    told,
    say`${listed(told.names)} cannot be taken as ${kindOf(role)}: there are too few different corners in ${it(told)}.`,
    say`A line needs two places, an area three.`,
    say`Draw it by hand, or get the file again.`,
  );
}

/** Things too far from the rest to be planned with it. */
export function foundFarAway(told: Told, away_m: number, most_m: number): Finding {
  return finding(
    "drawing/found-far-away",
    "warning",
    told,
    say`${listed(told.names)} ${was(told)} left out, up to ${quantity("length", away_m)} away from the parcels.`,
    say`A project reaches ${quantity("length", most_m)} at most; one thing further away would keep all of it from being planned.`,
    say`Take it into a project of its own, or check the coordinate system.`,
  );
}

/** Things that stand in the project already, in the same place and role. */
export function foundAlreadyThere(told: Told): Finding {
  return finding(
    "drawing/found-already-there",
    "note",
    told,
    say`${listed(told.names)} ${was(told)} in the project already, and not taken again.`,
    say`The same thing twice would count twice.`,
    say`Nothing needs to be done.`,
  );
}

/** More things than are taken in at once. */
export function foundTooMany(count: number, most: number): Finding {
  return finding(
    "drawing/found-too-many",
    "error",
    { names: [], count, at: null },
    say`${count} things are too many to be taken in at once; at most ${most} are.`,
    say`Each becomes a thing to select and to edit, and a project with more of them is slow to keep.`,
    say`Take fewer: vines and posts are worked out by the plan itself.`,
  );
}

/** Things chosen as spot heights that say no height. */
export function foundWithoutHeight(told: Told): Finding {
  return finding(
    "drawing/found-without-height",
    "warning",
    told,
    say`${listed(told.names)} cannot be taken as a spot height: not every place of ${it(told)} has a height.`,
    say`A place without a height says nothing about the slope.`,
    say`Choose another role, or leave it out.`,
  );
}

/** Lines taken as areas that did not come back to their beginning. */
export function foundClosed(told: Told, gap_m: number): Finding {
  return finding(
    "drawing/found-closed",
    "warning",
    told,
    say`${listed(told.names)} did not come back to the beginning; a straight side closes ${it(told)} now, up to ${quantity("length", gap_m)} long.`,
    say`Where the outline really runs there the file does not say.`,
    say`Look at that side on the map, and move its corners where they are not right.`,
  );
}

/** Parts of another shape in a thing that was taken. */
export function foundPartLeftOut(told: Told, parts: string): Finding {
  return finding(
    "drawing/found-part-left-out",
    "warning",
    told,
    say`Of ${listed(told.names)} only what fits the chosen role was taken; ${parts} were left out.`,
    say`One thing has one role.`,
    say`Choose another role to have them, or draw them by hand.`,
  );
}

/** Heights of corners that the role has no use for. */
export function foundHeightsLeftOut(told: Told): Finding {
  return finding(
    "drawing/found-heights-left-out",
    "note",
    told,
    say`The heights of ${listed(told.names)} were left out.`,
    say`Heights of the ground come from spot heights and height files; those of corners would not be used.`,
    say`Take points with heights as spot heights.`,
  );
}

/** Heights without a unit. */
export function foundHeightsAsMetres(told: Told): Finding {
  return finding(
    "drawing/found-heights-as-metres",
    "warning",
    told,
    say`The heights of ${listed(told.names)} were taken as metres: the file does not say what they are counted in.`,
    say`Feet taken for metres make every slope more than three times as steep.`,
    say`Hold one of them against the map; if they are feet, undo, and have them written with their unit, such as "elevation_ft".`,
  );
}

/** Properties that would mean something else in a project. */
export function foundPropertyLeftOut(told: Told, properties: readonly string[]): Finding {
  return finding(
    "drawing/found-property-left-out",
    "note",
    told,
    say`Of ${listed(told.names)} these values were left out: ${listed(properties.map((name) => `"${name}"`))}.`,
    say`In a project they are settings with units of their own, and the file does not say that it means the same.`,
    say`Type them at the thing, where they are meant so.`,
  );
}

/** Many heights that became one thing. */
export function foundHeightsTogether(told: Told, count: number): Finding {
  return finding(
    "drawing/found-heights-together",
    "note",
    told,
    say`${count} spot heights of ${listed(told.names)} were taken as one thing; their names and other values were left out.`,
    say`So many single points would hide what else is drawn.`,
    say`Take fewer of them where their names matter.`,
  );
}

function was({ count }: Told): string {
  return count === 1 ? "was" : "were";
}

function it({ count }: Told): string {
  return count === 1 ? "it" : "them";
}

function kindOf(role: Role): string {
  const kind = thingKind({ role, paths: [] }).toLowerCase();
  return `${/^[aeiou]/.test(kind) ? "an" : "a"} ${kind}`;
}

function finding(
  code: Finding["code"],
  severity: Finding["severity"],
  { at }: Told,
  message: Phrase,
  reason: Phrase,
  remedy: Phrase,
): Finding {
  return { code, severity, feature: null, at, message, reason, remedy };
}

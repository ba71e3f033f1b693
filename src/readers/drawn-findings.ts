import { type Finding, listed, say, unplaced } from "../core/finding.ts";

/** The numbers lie nowhere near where the system is of use. */
export function numbersOffSystem(name: string, system: string): Finding {
  return unplaced(
    "readers/numbers-off-system",
    "error",
    say`The numbers in ${name} lie nowhere in ${system}.`,
    say`Read so they would come out on other ground, or on none; nothing of it was taken.`,
    say`State the system that the file was made in; who made it can tell you.`,
  );
}

/** The file states a system that is not served. */
export function statedSystemUnread(name: string, stated: string): Finding {
  return unplaced(
    "readers/stated-system-unread",
    "warning",
    say`${name} states a coordinate system that is not known here: ${stated.slice(0, 120)}.`,
    say`A wrong system puts everything on other ground; nothing is guessed.`,
    say`State the system by another code, or as a proj4 text.`,
  );
}

/** Small units that a drawing states and that fit its size. */
export function drawnSmall(name: string, unit: string): Finding {
  return unplaced(
    "readers/drawn-small",
    "note",
    say`${name} says that it is drawn in ${unit}, and its size agrees; it was read so.`,
    say`Drawings often say a unit that nobody chose.`,
    say`Hold one distance against one that you know; if it is wrong, state the unit.`,
  );
}

/** Curves that were taken as corners. */
export function curvesAsCorners(name: string, count: number): Finding {
  return unplaced(
    "readers/curves-as-corners",
    "note",
    say`${name} has ${count} curved pieces; each was taken as short straight ones.`,
    say`A plan is made of straight sides; the corners lie on the curve, the sides within some millimetres of it.`,
    say`If a side should be straight, have it drawn so.`,
  );
}

/** What a drawing holds besides points, lines and outlines. */
export function notDrawn(name: string, kinds: readonly (readonly [kind: string, count: number])[]): Finding {
  return unplaced(
    "readers/not-drawn",
    "note",
    say`Of ${name} was not read: ${listed(
      kinds.map(([kind, count]) => `${count} ${kind}`),
      12,
    )}.`,
    say`Only points, lines, outlines, hatched areas, symbols and plain text have a place in a plan.`,
    say`If something of it is wanted, have it drawn as a polyline or a point.`,
  );
}

/** Symbols that were not taken apart. */
export function symbolsAsPoints(name: string, count: number): Finding {
  return unplaced(
    "readers/symbols-as-points",
    "note",
    say`${count} drawn symbols in ${name} were each taken as the point that they stand on.`,
    say`What a symbol looks like says nothing about the ground.`,
    say`If one is an outline, have it taken apart into lines in the drawing program.`,
  );
}

/** More things than a person could choose from. */
export function tooMuchDrawn(name: string, things: number, corners: number): Finding {
  return unplaced(
    "readers/too-much-drawn",
    "error",
    say`${name} holds more than ${things} things or ${corners} corners, once its symbols are put in their places.`,
    say`A drawing may repeat a symbol in a symbol until it fills any memory; nothing of it was taken.`,
    say`Have only the layers that matter written to a file.`,
  );
}

/** Things whose numbers cannot be read. */
export function withoutNumbers(name: string, count: number, example: string): Finding {
  return unplaced(
    "readers/without-numbers",
    "warning",
    say`${count} things in ${name} were left out, because they have no place: ${example}.`,
    say`Their numbers are missing, or are none.`,
    say`Look at them in the program that wrote the file.`,
  );
}

/** Guidance lines that have a place and a heading only. */
export function linesWithoutEnd(name: string, count: number): Finding {
  return unplaced(
    "readers/lines-without-end",
    "warning",
    say`${count} guidance lines in ${name} have one place only; they came in as points.`,
    say`A line from a place by a heading, or a circle around one, has no end that could be planted to.`,
    say`Record the line with both its ends (A and B).`,
  );
}

import { type Finding, listed, quantity, say, unplaced } from "../finding.ts";
import type { HandOverChoice, Thing } from "./choice.ts";
import type { Format, FormatChoice } from "./format.ts";
import { nameTokens } from "./name-pattern.ts";
import type { ChangedName } from "./naming.ts";

/** A format that is not in the list. */
export function noSuchFormat(name: string, names: readonly string[]): Finding {
  return unplaced(
    "exchange/no-such-format",
    "error",
    say`There is no format called ${quoted(name)}.`,
    say`Nothing is handed over.`,
    say`Choose one of ${listed(names, names.length)}.`,
  );
}

/** Things that a format cannot hold: an error when nothing else was asked for. */
export function notInFormat(things: readonly Thing[], format: Format, isAll: boolean): Finding {
  return unplaced(
    "exchange/not-in-format",
    isAll ? "error" : "warning",
    say`${format.title} has no place for ${listed(things)}.`,
    isAll ? say`Nothing is left to hand over.` : say`The rest is handed over without.`,
    say`Choose another format for them; this one takes ${listed(format.holds, format.holds.length)}.`,
  );
}

/** Kinds that were asked for and of which the plan has none. */
export function nothingOfKind(things: readonly Thing[], why: string): Finding {
  return unplaced(
    "exchange/nothing-of-kind",
    "warning",
    say`There is nothing to hand over of ${listed(things)}.`,
    say`${why}`,
    say`Leave them out, or plan them first.`,
  );
}

/** What was chosen among the rows and names none. */
export function rowsUnknown(parts: readonly string[], first: string, last: string): Finding {
  return unplaced(
    "exchange/rows-unknown",
    "error",
    say`No row is called ${listed(parts.map(quoted))}.`,
    say`Nothing is handed over, so that no row goes missing unseen.`,
    first === ""
      ? say`The plan has no rows yet.`
      : say`Rows go from ${first} to ${last}. Write numbers, ranges and names with commas: 1-10, 14a, ${first}.`,
  );
}

/** "1-10" where it is a row's name as well as a range. */
export function rowsAmbiguous(part: string, row: string, range: string): Finding {
  return unplaced(
    "exchange/rows-ambiguous",
    "error",
    say`"${part}" can be the row of that name, and the rows ${range}.`,
    say`Nothing is guessed.`,
    say`Write row-${row} for the one row, or ${range.replace(" to ", "..")} for the rows between.`,
  );
}

/** A baseline that is none of the plan. */
export function baselineUnknown(text: string, marks: readonly string[]): Finding {
  return unplaced(
    "exchange/baseline-unknown",
    "error",
    say`"${text}" is no baseline: it names neither two marks nor one row.`,
    say`Stations and offsets would be measured from somewhere else.`,
    marks.length === 0
      ? say`The plan has no marks; name a row, such as "row 1", or draw two marks.`
      : say`Name two marks with a comma between, or a row, such as "row 1". Marks: ${listed(marks, 12)}.`,
  );
}

/** A name that two marks or two rows have. */
export function baselineAmbiguous(text: string, name: string): Finding {
  return unplaced(
    "exchange/baseline-ambiguous",
    "error",
    say`More than one thing is called "${name}", so the baseline "${text}" is not one line.`,
    say`Nothing is guessed.`,
    say`Give marks names of their own, or name the row with its block.`,
  );
}

/** A baseline whose two ends lie on each other. */
export function baselineTooShort(text: string, length_m: number, least_m: number): Finding {
  return unplaced(
    "exchange/baseline-too-short",
    "error",
    say`The two ends of the baseline "${text}" are ${quantity("length", length_m)} apart.`,
    say`A line shorter than ${quantity("length", least_m)} has no sure direction: a centimetre at its end is metres at the far row.`,
    say`Take two marks that are far apart.`,
  );
}

/** Braces in a pattern of names with something between them that means nothing. */
export function namingTokenUnknown(unknown: readonly string[]): Finding {
  return unplaced(
    "exchange/naming-token-unknown",
    "error",
    say`In the pattern of names, ${listed(unknown)} ${unknown.length === 1 ? "means" : "mean"} nothing.`,
    say`It would stand in every name as it is.`,
    say`There is ${listed(
      nameTokens.map((token) => `{${token}}`),
      nameTokens.length,
    )}, with a number for leading zeros or first letters: {number:3}, {block:2}.`,
  );
}

/** A length of names in which so many cannot be told apart. */
export function namesTooShort(longest: number, count: number, least: number): Finding {
  return unplaced(
    "exchange/names-too-short",
    "error",
    say`Names of ${longest} letters are too short for ${count} things.`,
    say`They could not be told apart.`,
    say`Allow ${least} letters or more.`,
  );
}

/** Names that are not as the pattern makes them. */
export function namesChanged(
  changed: readonly ChangedName[],
  naming: { readonly longest: number | null; readonly letters: string },
): Finding {
  const [first] = changed;
  const kept = [
    "unique",
    ...(naming.longest === null ? [] : [`at most ${naming.longest} letters`]),
    ...(naming.letters !== "any" ? ["in plain letters"] : []),
  ];
  return unplaced(
    "exchange/names-changed",
    "warning",
    changed.length === 1
      ? say`One name is changed: ${quoted(first?.wished ?? "")} is ${quoted(first?.name ?? "")}.`
      : say`${changed.length} names are changed; ${quoted(first?.wished ?? "")} is ${quoted(first?.name ?? "")}.`,
    say`Names in the file are ${listed(kept)}; on paper and on screen they are as they were.`,
    say`Choose a pattern that makes shorter and different names, such as {block:2}{row}{code}{number:2}.`,
  );
}

/** A number among the choices that makes no sense. */
export function choiceOutOfRange(
  what: "pointsAFile" | "pegBeyond_m",
  value: HandOverChoice["pointsAFile" | "pegBeyond_m"],
): Finding {
  return unplaced(
    "exchange/choice-out-of-range",
    "error",
    what === "pointsAFile"
      ? say`${String(value)} points to a file is not a whole number of 1 or more.`
      : say`An offset peg cannot stand ${String(value)} metres beyond the anchor.`,
    say`Nothing can be written by it.`,
    what === "pointsAFile"
      ? say`Give a whole number, such as 500; or none for one file.`
      : say`Give 0 or more, up to 100 metres.`,
  );
}

/** Choices that mean nothing in a format. */
export function choiceNotUsed(unused: readonly FormatChoice[], format: Format): Finding {
  return unplaced(
    "exchange/choice-not-used",
    "note",
    say`${format.title} makes no use of ${listed(
      unused.map((each) => called[each]),
      unused.length,
    )}.`,
    format.places === "degrees" && unused.includes("system")
      ? say`Its places are always longitude and latitude on WGS 84.`
      : say`The file is the same without.`,
    say`Leave it out, or choose a format that has it.`,
  );
}

const called: Readonly<Record<FormatChoice, string>> = {
  system: "the coordinate system",
  unit: "the unit",
  naming: "the pattern of names",
  nameLength: "the length of names",
  pointsAFile: "the number of points to a file",
  order: "the order of northing and easting",
  heights: "heights",
  baseline: "the baseline",
  together: "all in one file",
};

/** A format that has no degrees, asked for in a system of degrees. */
export function systemInDegrees(format: Format, system: string): Finding {
  return unplaced(
    "exchange/system-in-degrees",
    "error",
    say`${format.title} counts in metres or feet; ${system} counts degrees.`,
    say`Lengths and angles in the file would be wrong.`,
    say`Choose a projected system, such as a UTM zone, or the local plane.`,
  );
}

/** A system that does not hold where the plan lies. */
export function systemOutOfReach(system: string, scale_ratio: number | null): Finding {
  return unplaced(
    "exchange/system-out-of-reach",
    scale_ratio === null ? "error" : "warning",
    scale_ratio === null
      ? say`${system} has no numbers for the place of the plan.`
      : say`${system} stretches lengths at the place of the plan by the factor ${scale_ratio.toFixed(4)}.`,
    scale_ratio === null
      ? say`Nothing can be written in it.`
      : say`100 m on the ground would be ${quantity("length", 100 * scale_ratio)} by the numbers of the file.`,
    say`Choose the system of the region, such as its UTM zone.`,
  );
}

/** Heights that were wished and are not known everywhere. */
export function heightsMissing(missing: number, of: number): Finding {
  return unplaced(
    "exchange/heights-missing",
    "warning",
    say`At ${missing} of ${of} row ends the height of the ground is not known.`,
    say`Places without a known height go out without one; nothing is guessed.`,
    say`Bring in heights that cover the rows and a strip around them, or hand over without heights.`,
  );
}

/** A local plane that a plan without ground has not got. */
export function noGround(): Finding {
  return unplaced(
    "exchange/no-ground",
    "error",
    say`The plan has no ground yet, so nothing in it has a place.`,
    say`There is nothing to hand over.`,
    say`Draw the parcel or bring it in first.`,
  );
}

function quoted(name: string): string {
  return `"${name}"`;
}

import { type Finding, quantity, say, unplaced } from "../../core/finding.ts";

/** A line with numbers that are no corner. The reason is a sentence without its full stop, in lower case. */
export function lineUnread(line: number, written: string, reason: string): Finding {
  return unplaced(
    "readers/line-unread",
    "warning",
    say`Line ${line} is not understood and was left out: "${shortened(written)}": ${reason}.`,
    say`An outline without one of its corners is another outline.`,
    say`Mend the line, or take it out if it is no corner.`,
  );
}

/** More such lines than are worth telling one by one. */
export function linesUnread(count: number): Finding {
  return unplaced(
    "readers/lines-unread",
    "warning",
    say`${count} more lines are not understood and were left out.`,
    say`An outline without some of its corners is another outline.`,
    say`Check that the whole list is of one kind: degrees, eastings and northings, or bearings and distances.`,
  );
}

/** Third numbers beside degrees. */
export function numbersBeside(count: number): Finding {
  return unplaced(
    "readers/numbers-beside",
    "note",
    say`${count} corners have a third number beside latitude and longitude; it was left out.`,
    say`It may be a height, but the list does not say in which unit and from which zero.`,
    say`Bring heights in as a file with a head that names them and their unit.`,
  );
}

/** Nothing in the text is a corner. */
export function noCorners(): Finding {
  return unplaced(
    "readers/no-corners",
    "error",
    say`No corner is found in this text.`,
    say`A corner is a latitude and a longitude, an easting and a northing, or a bearing with a distance, each on a line of its own.`,
    say`Write it like "38.2914, -122.4580", "38°17'29"N 122°27'29"W", "10N 547321.4 4238115.9" or "N 45°30'15" E 250.00 ft".`,
  );
}

/** Longer than any list of corners. */
export function listTooLong(most: number): Finding {
  return unplaced(
    "readers/list-too-long",
    "error",
    say`The text has more than ${most} letters.`,
    say`No parcel has so many corners; the page would stand still while reading it.`,
    say`Save it as a file (CSV) and bring the file in, or paste the parcel's corners alone.`,
  );
}

/** The numbers are no place of the system. */
export function cornersElsewhere(system: string): Finding {
  return unplaced(
    "readers/corners-elsewhere",
    "error",
    say`The numbers do not lie where ${system} is used, in either order.`,
    say`A wrong system or unit puts everything on other ground; nothing is guessed.`,
    say`State the coordinate system and the unit that the numbers were made in: who surveyed them can tell you.`,
  );
}

/** UTM without a word on its datum. */
export function utmDatumTaken(system: string): Finding {
  return unplaced(
    "readers/utm-datum-taken",
    "note",
    say`A zone alone names no datum; the numbers were read in ${system}.`,
    say`On the datum of a country (NAD83, ETRS89, GDA) the same numbers lie up to ${quantity("length", 2)} beside, all alike.`,
    say`If the list says another datum, write its EPSG code on a line of its own, such as "EPSG:26910".`,
  );
}

/** Courses without a place to begin from. */
export function noBeginning(): Finding {
  return unplaced(
    "readers/no-beginning",
    "warning",
    say`Where the boundary begins is not said.`,
    say`Bearings and distances tell the shape of the ground; its place is that of the first corner.`,
    say`Give the first corner: latitude and longitude of a pin or post you can measure, or pick it on the map.`,
  );
}

/** How far the end of a boundary misses its beginning. */
export function closureError(error_m: number, length_m: number, oneIn: number, isRough: boolean): Finding {
  return unplaced(
    "readers/closure-error",
    isRough ? "warning" : "note",
    say`The end misses the beginning by ${quantity("length", error_m)} over ${quantity("length", length_m)} (1 in ${oneIn}). The corners stand as they are told; nothing was evened out.`,
    isRough
      ? say`A careful tape comes to 1 in 3000: a bearing or a distance is likely wrong, or was read wrong.`
      : say`Every survey has some; the last side takes all of it.`,
    isRough
      ? say`Compare each line with the deed; a side read the other way round (E for W) shows as a miss twice its length.`
      : say`Nothing, if it is small beside the setbacks.`,
  );
}

/** The last side back to the beginning is not told. */
export function closingSide(length_m: number, bearing: string): Finding {
  return unplaced(
    "readers/closing-side",
    "warning",
    say`The boundary does not come back to its beginning; it was closed by a straight side of ${quantity("length", length_m)} at ${bearing}.`,
    say`Either the last side is not in the text, or one of its lines is wrong.`,
    say`Compare the closing side with the deed, or add its bearing and distance.`,
  );
}

/** A side that is told as a curve. */
export function curveAsChord(line: number): Finding {
  return unplaced(
    "readers/curve-as-chord",
    "warning",
    say`Line ${line} speaks of a curve; only straight sides are read, so it counts with the bearing and distance that stand with it, or not at all.`,
    say`The ground between the curve and its chord is missing or too much.`,
    say`Give the chord (bearing and distance between the curve's ends), and draw the curve in afterwards.`,
  );
}

/** Feet that may be either of the two. */
export function feetTaken(apart_m: number): Finding {
  return unplaced(
    "readers/feet-taken",
    "note",
    say`Feet, rods and chains are reckoned by the international foot; by the US survey foot the boundary is ${quantity("length", apart_m)} longer in all.`,
    say`The two differ by 2 parts in a million.`,
    say`Nothing, unless it matters to you; write "US survey feet" after the distances to have them so.`,
  );
}

function shortened(written: string): string {
  const plain = written.trim();
  return plain.length > 60 ? `${plain.slice(0, 57)}…` : plain;
}

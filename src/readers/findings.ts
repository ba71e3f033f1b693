import { type Finding, quantity, say, unplaced } from "../core/finding.ts";
import type { LonLat } from "../core/plane/coordinate.ts";
import type { VerticalUnit } from "./vertical-unit.ts";

const unitNames: Readonly<Record<VerticalUnit, string>> = { m: "metres", ft: "feet", "us-ft": "US survey feet" };

/** The file is no TIFF, or is cut off. */
export function notATiff(name: string): Finding {
  return unplaced(
    "readers/not-a-tiff",
    "error",
    say`${name} is not a GeoTIFF file, or only part of one.`,
    say`Heights are read from GeoTIFF files; nothing else that ends in .tif is one.`,
    say`Get the file again, or have it written as a GeoTIFF of heights ("DEM", "DTM").`,
  );
}

/** A track without heights, or no track at all. */
export function noTrackHeights(name: string): Finding {
  return unplaced(
    "readers/no-track-heights",
    "error",
    say`${name} holds no track with heights.`,
    say`The ground's heights are taken from track points that say how high they are.`,
    say`Record the track with a receiver that notes heights, and save it as GPX 1.1.`,
  );
}

/** The file is a TIFF whose cells cannot be read. */
export function unreadable(name: string, why: string): Finding {
  return unplaced(
    "readers/unreadable",
    "error",
    say`The heights in ${name} cannot be read: ${why}.`,
    say`The file may be damaged, or packed in a way that is not understood here.`,
    say`Have it written again without compression, or with DEFLATE or LZW.`,
  );
}

/** A picture, not heights. */
export function notHeights(name: string): Finding {
  return unplaced(
    "readers/not-heights",
    "error",
    say`${name} holds a picture in colours, not heights.`,
    say`Colours of a shaded map do not say how high the ground is.`,
    say`Choose the file with the heights themselves: one number a cell ("DEM", "DTM").`,
  );
}

/** The file does not say where its cells lie. */
export function withoutPlace(name: string): Finding {
  return unplaced(
    "readers/without-place",
    "error",
    say`${name} does not say where on the earth its cells lie.`,
    say`Heights are of no use without their place.`,
    say`Get the file with its georeference inside; a .tfw file beside it is not read.`,
  );
}

/** The unit of the file's coordinates is not that of its coordinate system. */
export function unitsDisagree(system: string): Finding {
  return unplaced(
    "readers/units-disagree",
    "error",
    say`The file says that its coordinates are in another unit than its coordinate system (${system}) has.`,
    say`Feet taken for metres, or survey feet for feet, put the heights metres to kilometres off.`,
    say`State the system as a proj4 text with the right +units.`,
  );
}

/** No height of the file lies on the ground that is wanted. */
export function elsewhere(name: string, at: LonLat | null): Finding {
  return {
    ...unplaced(
      "readers/elsewhere",
      "error",
      say`${name} has no heights on this ground.`,
      say`It covers other ground, or its coordinate system is not the one it was read with.`,
      say`Choose the file that covers the parcel, or state another coordinate system.`,
    ),
    at,
  };
}

/** Part of the wanted ground has no height. */
export function gaps(name: string, share: number): Finding {
  return unplaced(
    "readers/gaps",
    "warning",
    say`${name} has no heights on ${quantity("ratio", share)} of the ground around the parcel.`,
    say`Outside the heights nothing is guessed: rows and trenches there are reckoned level.`,
    say`Add a file that covers it all, or check that the gap lies beside your rows.`,
  );
}

/** The chosen unit is not the one the file names. */
export function unitDiffers(chosen: VerticalUnit, stated: VerticalUnit): Finding {
  return unplaced(
    "readers/unit-differs",
    "warning",
    say`Heights are read as ${unitNames[chosen]}; the file says ${unitNames[stated]}.`,
    say`Feet taken for metres make every slope more than three times as steep.`,
    say`Hold one height against the map or a spot you know.`,
  );
}

/** Numbers that no ground has. */
export function impossibleHeights(count: number): Finding {
  return unplaced(
    "readers/impossible-heights",
    "warning",
    say`${count} heights are far below the sea or above all mountains with vines, so they are taken as not known.`,
    say`They are likely marks for "no data" that the file does not declare, or the unit is wrong.`,
    say`Check the unit of the heights.`,
  );
}

/** Several numbers a cell. */
export function firstBandOf(count: number): Finding {
  return unplaced(
    "readers/several-bands",
    "note",
    say`The file holds ${count} numbers for every cell; the first is read as the height.`,
    say`The others may be something else, such as how sure each height is.`,
    say`If the height is another one, have the file written with the heights alone.`,
  );
}

/** Blocks that have to be read whole and do not fit. */
export function tooLargeBlocks(name: string): Finding {
  return unplaced(
    "readers/too-large-blocks",
    "error",
    say`${name} is packed in pieces too large to be read in part.`,
    say`The whole would have to fit into memory to read one parcel of it.`,
    say`Have it written in tiles ("tiled GeoTIFF"), or cut to the surroundings of the parcel.`,
  );
}

/** The person stopped it. */
export function stopped(name: string): Finding {
  return unplaced(
    "readers/stopped",
    "note",
    say`Reading ${name} was stopped.`,
    say`Nothing of it was taken into the project.`,
    say`Open the file again to read it.`,
  );
}

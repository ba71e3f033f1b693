import { type Finding, listed, say, unplaced } from "../../../finding.ts";

/** Areas in a format that has none. */
export function outlinesAsTracks(title: string, count: number): Finding {
  return unplaced(
    "exchange/outlines-as-tracks",
    "note",
    count === 1
      ? say`${title} has no areas: 1 outline goes out as a closed track.`
      : say`${title} has no areas: ${count} outlines go out as closed tracks.`,
    say`Holes and separate parts of an outline are further pieces of its track; a receiver shows them as lines.`,
    say`Where an area is wanted, hand it over as KML or GeoJSON.`,
  );
}

/** Lines and outlines with more points than a file is to have. */
export function morePointsThanAFile(names: readonly string[], most: number): Finding {
  return unplaced(
    "exchange/more-points-than-a-file",
    "warning",
    names.length === 1
      ? say`${listed(names)} has more than ${most} points by itself, so its file does too.`
      : say`${listed(names)} have more than ${most} points each, so their files do too.`,
    say`A line that is cut in two would no longer be the same line.`,
    say`Allow more points a file, or leave these out.`,
  );
}

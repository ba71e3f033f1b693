import { type Finding, type Phrase, quantity, type Severity, say } from "../finding.ts";
import type { LonLat } from "../plane/coordinate.ts";
import type { FeatureKey, Role } from "./project.ts";

/** The feature a finding is about, and the place in it. */
export interface Where {
  readonly feature: FeatureKey;
  readonly at: LonLat | null;
}

const wholeFile = { feature: null, at: null } as const;

/** `"oak"`, or `number 4 of the file` for a feature without an id. */
function named(feature: FeatureKey): string {
  const place = /^#(\d+)'*$/.exec(feature)?.[1];
  return place === undefined ? `"${feature}"` : `number ${Number(place) + 1} of the file`;
}

function plural(count: number, one: string, many: string): string {
  return count === 1 ? `one ${one}` : `${count} ${many}`;
}

/** At the beginning of a sentence. */
function pluralFirst(count: number, one: string, many: string): string {
  return count === 1 ? `One ${one}` : `${count} ${many}`;
}

// The file as a text.

/** A text with nothing in it. */
export function emptyFile(): Finding {
  return {
    code: "project/empty-file",
    severity: "error",
    ...wholeFile,
    message: say`The file is empty.`,
    reason: say`There is no parcel in it to plan.`,
    remedy: say`Check that it was saved or copied in full, or start from a parcel outline in GeoJSON.`,
  };
}

/** A file that is larger than what is read. */
export function projectTooLarge(size_bytes: number, most_bytes: number): Finding {
  const megabytes = (bytes: number) => `${Math.round(bytes / 1e6)} MB`;
  return {
    code: "project/too-large",
    severity: "error",
    ...wholeFile,
    message: say`The file has ${megabytes(size_bytes)}; at most ${megabytes(most_bytes)} are read.`,
    reason: say`A larger one may not fit into memory, and then what is open would be lost.`,
    remedy: say`Keep only the ground of one project in a file.`,
  };
}

/** A text that stops within a bracket or a word; the line counts from 1. */
export function truncatedFile(line: number): Finding {
  return {
    code: "project/truncated",
    severity: "error",
    ...wholeFile,
    message: say`The file ends early: line ${line} stops in the middle of something.`,
    reason: say`What is missing cannot be guessed.`,
    remedy: say`Copy or download the file again; the part that was cut off is at its end.`,
  };
}

/** A mark where JSON cannot have it; line and column count from 1. */
export function notJson(found: string, line: number, column: number): Finding {
  const looksLike = /^</.test(found)
    ? " It looks like XML, as KML and GPX are: save it as GeoJSON first."
    : /^PK/.test(found)
      ? " It looks like a zip archive: unpack it first."
      : "";
  return {
    code: "project/not-json",
    severity: "error",
    ...wholeFile,
    message: say`The file is not JSON: line ${line}, column ${column} has ${found === "" ? "something" : `"${found}"`} where it cannot stand.${looksLike}`,
    reason: say`GeoJSON is JSON; nothing of the file can be read until it is.`,
    remedy: say`Open the file in a text editor, go to that line and mend it, or export it again.`,
  };
}

/** NaN or Infinity written as a number, which JSON has not got. */
export function notANumber(found: string, line: number, column: number): Finding {
  return {
    code: "project/not-a-number",
    severity: "error",
    ...wholeFile,
    message: say`Line ${line}, column ${column} has ${found} in place of a number, so the file is not JSON.`,
    reason: say`A place without a number is no place; JSON has no such value.`,
    remedy: say`Put the right number there, or take the point out, and export the file again.`,
  };
}

/** Brackets within brackets beyond any sense. */
export function tooDeep(levels: number): Finding {
  return {
    code: "project/too-deep",
    severity: "error",
    ...wholeFile,
    message: say`The file has brackets within brackets more than ${levels} deep.`,
    reason: say`No parcel needs that; the file is broken, or made to do harm.`,
    remedy: say`Export it again from where it came.`,
  };
}

/** JSON that holds neither a collection, a feature nor a geometry. */
export function notGeoJson(found: string): Finding {
  return {
    code: "project/not-geojson",
    severity: "error",
    ...wholeFile,
    message: say`The file is JSON, but not GeoJSON: ${found}.`,
    reason: say`A parcel is looked for in a FeatureCollection, a Feature or a geometry.`,
    remedy: say`Export the parcel as GeoJSON; its first lines should have "type": "FeatureCollection" and a list of features.`,
  };
}

/** Settings of a later project format. */
export function newerVersion(version: number, known: number): Finding {
  return {
    code: "project/newer-version",
    severity: "error",
    ...wholeFile,
    message: say`The file was written in project format ${version}; this program knows formats up to ${known}.`,
    reason: say`Settings could mean something else there. The file is kept as it is and its settings are not used.`,
    remedy: say`Open it with a newer version of the program.`,
  };
}

// Structure and coordinates.

/** A feature that GeoJSON does not allow. */
export function badStructure(where: Where, fault: string): Finding {
  return {
    code: "project/bad-structure",
    severity: "error",
    ...where,
    message: say`Feature ${named(where.feature)} is not built as GeoJSON wants it: ${fault}.`,
    reason: say`It is kept in the file, but cannot be used.`,
    remedy: say`Draw it again, or export it again from where it came.`,
  };
}

/** A bounding box that is none. */
export function badBox(where: Where, fault: string): Finding {
  return {
    code: "project/bad-bbox",
    severity: "warning",
    ...where,
    message: say`The bounding box of feature ${named(where.feature)} is not one: ${fault}.`,
    reason: say`It is not used here, but other programs may stumble over it.`,
    remedy: say`Take the member "bbox" out, or export the file again.`,
  };
}

/** A position that is not two finite numbers; its number in the feature counts from 1. */
export function badCoordinate(where: Where, position: number, found: string, count: number): Finding {
  const more = count > 1 ? `, and ${plural(count - 1, "more position is", "more positions are")} no better` : "";
  return {
    code: "project/bad-coordinate",
    severity: "error",
    ...where,
    message: say`Position ${position} of feature ${named(where.feature)} has ${found} where a number in degrees must stand${more}.`,
    reason: say`A place that is not known cannot be staked. The feature is kept in the file, but not used.`,
    remedy: say`Write longitude and latitude as plain numbers, such as [-76.9, 42.6].`,
  };
}

/** A position off the globe. */
export function outOfRange(where: Where, x: number, y: number): Finding {
  return {
    code: "project/out-of-range",
    severity: "error",
    ...where,
    message: say`Feature ${named(where.feature)} has the position [${x}, ${y}], which is not on the globe.`,
    reason: say`Longitude goes from -180 to 180 degrees and latitude from -90 to 90.`,
    remedy: say`Correct the number, or save the file in longitude and latitude (WGS84) if it is in another system.`,
  };
}

/** Metres or feet where degrees must stand. */
export function projected(where: Where, x: number, y: number, others: number, system: string | null): Finding {
  return {
    code: "project/projected",
    severity: "error",
    ...where,
    message: say`Feature ${named(where.feature)}${others > 0 ? ` and ${plural(others, "other", "others")}` : ""} has coordinates such as [${x}, ${y}]: metres or feet of a map projection, not degrees.${system === null ? "" : ` The file names ${system}.`}`,
    reason: say`GeoJSON is in longitude and latitude; which projection these numbers are in cannot be guessed.`,
    remedy: say`Export the file again in longitude and latitude (WGS84, EPSG:4326).`,
  };
}

/** Latitude and longitude proven to be the wrong way round. */
export function swapped(where: Where, x: number, y: number, others: number): Finding {
  return {
    code: "project/swapped",
    severity: "error",
    ...where,
    message: say`Feature ${named(where.feature)}${others > 0 ? ` and ${plural(others, "other", "others")}` : ""} has the position [${x}, ${y}]: latitude and longitude are the wrong way round.`,
    reason: say`The second number must be the latitude, and no vine grows at ${y} degrees.`,
    remedy: say`Write every position as [longitude, latitude].`,
  };
}

/** A parcel where no vines grow, though they would at its swapped place. */
export function perhapsSwapped(where: Where, x: number, y: number): Finding {
  return {
    code: "project/perhaps-swapped",
    severity: "warning",
    ...where,
    message: say`The parcel lies at latitude ${y} and longitude ${x}; the two may be the wrong way round.`,
    reason: say`Vines grow at about 25 to 58 degrees of latitude, and the longitude of this parcel would be one.`,
    remedy: say`Look at the parcel on the map. If it is in the wrong country, write every position as [longitude, latitude].`,
  };
}

/** Features further apart than the local frame is good for. */
export function tooWide(where: Where, width_m: number, most_m: number): Finding {
  return {
    code: "project/too-wide",
    severity: "error",
    ...where,
    message: say`The project is ${quantity("length", width_m)} across; feature ${named(where.feature)} is the one furthest out.`,
    reason: say`Lengths are exact only within ${quantity("length", most_m)}. A feature this far off is often a slip in one number.`,
    remedy: say`Move or delete the feature that is far off, or make a project of its own for each site.`,
  };
}

/** A stated frame origin too far from the parcels. */
export function frameTooFar(at: LonLat, distance_m: number, most_m: number): Finding {
  return {
    code: "project/frame-too-far",
    severity: "error",
    at,
    feature: null,
    message: say`The origin of the local frame lies ${quantity("length", distance_m)} from the parcel.`,
    reason: say`Lengths are exact only up to ${quantity("length", most_m)} from the origin.`,
    remedy: say`Take "frame" out of the settings; a new origin is then set in the middle of the parcels.`,
  };
}

// Rings and areas.

/** A place where a ring meets itself; `more` are not named one by one. */
export function selfCrossing(where: Where, more: number): Finding {
  return {
    code: "project/self-crossing",
    severity: "error",
    ...where,
    message: say`The outline of feature ${named(where.feature)} crosses or touches itself here${more > 0 ? `, and in ${plural(more, "more place", "more places")} or more` : ""}.`,
    reason: say`What is inside and what is outside is not clear there.`,
    remedy: say`Move or delete the corner that is out of order, so that the outline goes round once.`,
  };
}

/** A hole that is not within its outer ring. */
export function holeOutside(where: Where): Finding {
  return {
    code: "project/hole-outside",
    severity: "error",
    ...where,
    message: say`A hole of feature ${named(where.feature)} reaches outside its outline here.`,
    reason: say`A hole is ground taken out of the area it belongs to.`,
    remedy: say`Move the hole inside the outline, or draw it as an obstacle of its own.`,
  };
}

/** Two holes that share ground. */
export function holesOverlap(where: Where): Finding {
  return {
    code: "project/holes-overlap",
    severity: "error",
    ...where,
    message: say`Two holes of feature ${named(where.feature)} overlap here.`,
    reason: say`Ground that is taken out twice would count as ground again.`,
    remedy: say`Draw the two as one hole, or move them apart.`,
  };
}

/** A ring that encloses nothing. */
export function zeroArea(where: Where, area_m2: number): Finding {
  return {
    code: "project/zero-area",
    severity: "error",
    ...where,
    message: say`A ring of feature ${named(where.feature)} encloses ${quantity("area", area_m2)}: no ground.`,
    reason: say`Its corners lie on one line or on one spot.`,
    remedy: say`Draw the outline again, with at least three corners that are not in line.`,
  };
}

/** A file without a parcel to plan on. */
export function noParcel(): Finding {
  return {
    code: "project/no-parcel",
    severity: "error",
    ...wholeFile,
    message: say`There is no parcel in the file that can be used.`,
    reason: say`Rows are laid out within a parcel.`,
    remedy: say`Draw the outline of the ground as a polygon with the role "parcel".`,
  };
}

/** Two parcels, or two polygons of one, that share ground. */
export function parcelsOverlap(where: Where, other: FeatureKey): Finding {
  return {
    code: "project/parcels-overlap",
    severity: "warning",
    ...where,
    message: say`Parcel ${named(where.feature)} and parcel ${named(other)} overlap here; they are taken as one.`,
    reason: say`Ground that is drawn twice counts once, and the border between the two does not hold rows off.`,
    remedy: say`Move the border so that the two only touch, if they are two parcels.`,
  };
}

// Roles and features.

/** A role that is not in the list. */
export function unknownRole(where: Where, role: string, nearest: string | null): Finding {
  return {
    code: "project/unknown-role",
    severity: "warning",
    ...where,
    message: say`Feature ${named(where.feature)} has the role ${role}, which is not known${nearest === null ? "" : `; did you mean "${nearest}"`}.`,
    reason: say`It is kept in the file, but not used.`,
    remedy: say`Give it one of the known roles, such as parcel, obstacle, no-plant, edge, cross-alley, row, source or mark.`,
  };
}

/** A feature that does not say what it is. */
export function noRole(where: Where): Finding {
  return {
    code: "project/no-role",
    severity: "warning",
    ...where,
    message: say`Feature ${named(where.feature)} has no role, so it is not used.`,
    reason: say`Without a role it could be anything: a tree, a fence, a note.`,
    remedy: say`Add "role" to its properties, such as "obstacle" for a tree or "no-plant" for a stream.`,
  };
}

/** A role whose feature is drawn as another kind of thing. */
export function wrongGeometry(where: Where, role: Role, wanted: string): Finding {
  return {
    code: "project/wrong-geometry",
    severity: "warning",
    ...where,
    message: say`Feature ${named(where.feature)} has the role "${role}" but is not drawn as ${wanted}, so it is not used.`,
    reason: say`A ${role} has to be ${wanted}.`,
    remedy: say`Draw it as ${wanted}, or give it another role.`,
  };
}

/** A role whose feature has no place. */
export function emptyGeometry(where: Where): Finding {
  return {
    code: "project/empty-geometry",
    severity: "warning",
    ...where,
    message: say`Feature ${named(where.feature)} has no shape, so it is not used.`,
    reason: say`It has a role, but nobody knows where it is.`,
    remedy: say`Draw it on the map, or delete it.`,
  };
}

/** An id that an earlier feature has. */
export function duplicateId(where: Where, id: string): Finding {
  return {
    code: "project/duplicate-id",
    severity: "warning",
    ...where,
    message: say`Two features have the id "${id}"; the later one is called ${named(where.feature)} here.`,
    reason: say`A setting that names the id means the first of them.`,
    remedy: say`Give each feature an id of its own.`,
  };
}

/** A parcel good for a sketch only. */
export function walkedOutline(where: Where): Finding {
  return {
    code: "project/walked-outline",
    severity: "warning",
    ...where,
    message: say`The outline of parcel ${named(where.feature)} was walked with a phone: it is a sketch, not for staking.`,
    reason: say`A phone is ${quantity("length", 3)} to ${quantity("length", 10)} off, so row lengths and counts are rough.`,
    remedy: say`Have the corners measured with a rover or a tape before you stake or buy.`,
  };
}

/** A feature for a block that the settings have not got (null: that it does not name). */
export function unknownBlock(where: Where, block: string | null): Finding {
  return {
    code: "project/unknown-block",
    severity: "warning",
    ...where,
    message: say`Feature ${named(where.feature)} ${block === null ? "does not say which block it belongs to" : `belongs to block "${block}", which the settings do not have`}, so it is not used.`,
    reason: say`Spacings and bearing come from the block in the settings.`,
    remedy: say`Add the block to the settings, or correct the property "block".`,
  };
}

/** A spot height that does not say how high. */
export function heightMissing(where: Where): Finding {
  return {
    code: "project/height-missing",
    severity: "warning",
    ...where,
    message: say`The spot height at feature ${named(where.feature)} does not say how high the ground is, so it is not used.`,
    reason: say`A place without a height says nothing about the slope.`,
    remedy: say`Give it the property "height", such as "214 m".`,
  };
}

/** Heights that come with the positions of a line, as a walked track has them. */
export function trackHeights(where: Where, count: number): Finding {
  return {
    code: "project/track-heights",
    severity: "note",
    ...where,
    message: say`${count} heights come with the positions of the line ${named(where.feature)}, as a walked track has them.`,
    reason: say`Heights of a hand-held receiver are commonly metres off and drift while you walk: fine for the lie of the land, not for the depth of a trench.`,
    remedy: say`Hold some of them against a level or a surveyed height, or let one plane lie through them all (ground.heights "plane").`,
  };
}

/** A standing row without end posts and without number and taped length. */
export function incompleteRow(where: Where): Finding {
  return {
    code: "project/incomplete-row",
    severity: "warning",
    ...where,
    message: say`The row that stands at feature ${named(where.feature)} has neither two end posts nor a number with a taped length, so it is not used.`,
    reason: say`One of the two is needed to know which row it is and how long.`,
    remedy: say`Draw a line between its two end posts, or give "row" and "tapedLength".`,
  };
}

// Settings.

/** A setting, or a property of a feature, that is not understood or not there; `why` is half a sentence. */
export function badSetting(path: string, value: string, why: string, where: Partial<Where> = {}): Finding {
  return {
    code: "project/bad-setting",
    severity: "error",
    ...wholeFile,
    ...where,
    message: say`${settingOf(path, where)} is ${value}: ${why}.`,
    reason: say`What was meant cannot be guessed, and a wrong number would go into every row.`,
    remedy: say`Correct it, or take it out to use the default.`,
  };
}

/** A setting, or a property of a feature, beyond what a vineyard has. */
export function settingOutOfRange(path: string, value: Phrase, limits: Phrase, where: Partial<Where> = {}): Finding {
  return {
    code: "project/setting-out-of-range",
    severity: "error",
    ...wholeFile,
    ...where,
    message: [...say`${settingOf(path, where)} is `, ...value, ...say`; it must be `, ...limits, "."],
    reason: say`No vineyard is built that way; it is likely a slip, or the wrong unit.`,
    remedy: say`Correct the number, and write its unit with it, such as "8 ft" or "2.4 m".`,
  };
}

function settingOf(path: string, { feature }: Partial<Where>): string {
  return feature === undefined ? `The setting ${path}` : `"${path}" of feature ${named(feature)}`;
}

/** A member of the settings that nobody reads. */
export function unknownSetting(path: string, nearest: string | null): Finding {
  return {
    code: "project/unknown-setting",
    severity: "note",
    ...wholeFile,
    message: say`The setting ${path} is not known${nearest === null ? "" : `; did you mean ${nearest}`}. It is kept in the file, but not used.`,
    reason: say`If it was meant for this program, the plan does not follow it.`,
    remedy: say`Correct its name, or leave it if it belongs to something else.`,
  };
}

/** Two blocks with one id. */
export function duplicateBlock(block: string): Finding {
  return {
    code: "project/duplicate-block",
    severity: "error",
    ...wholeFile,
    message: say`Two blocks in the settings have the id "${block}".`,
    reason: say`Rows and areas could belong to either.`,
    remedy: say`Give each block an id of its own.`,
  };
}

/** All that was taken as usual, in one sentence. */
export function defaultsUsed(values: Phrase): Finding {
  return {
    code: "project/defaults-used",
    severity: "note",
    ...wholeFile,
    message: [...say`Not stated, so taken as usual: `, ...values, "."],
    reason: say`These are common practice, not measured on your ground; each of them changes lengths or counts.`,
    remedy: say`Look through them and set those that differ from how you build.`,
  };
}

// What was mended: always notes, since nothing is lost and the file stays as it is.

/** A file that is one feature or geometry. */
export function bareGeometry(where: Where, kind: string): Finding {
  return mended(
    where,
    "project/bare-geometry",
    say`The file is a bare ${kind}; it is taken as a project with that one feature.`,
    say`A project is a collection of features with its settings.`,
  );
}

/** An area without a role, taken as the parcel. */
export function parcelAssumed(where: Where): Finding {
  return mended(
    where,
    "project/parcel-assumed",
    say`No feature has the role "parcel", so the area of feature ${named(where.feature)}, which has no role, is taken as one.`,
    say`Rows need a parcel.`,
    say`Add the role "parcel" to its properties, or another role if it is something else.`,
  );
}

/** A ring whose last position was not its first. */
export function ringClosed(where: Where): Finding {
  return mended(
    where,
    "project/ring-closed",
    say`The outline of feature ${named(where.feature)} did not come back to its first corner; it was closed.`,
    say`The last corner is joined to the first by a straight edge.`,
    say`Check that no corner is missing there.`,
  );
}

/** A ring against the right-hand rule. */
export function ringRewound(where: Where): Finding {
  return mended(
    where,
    "project/ring-rewound",
    say`A ring of feature ${named(where.feature)} runs the other way round than GeoJSON asks; it is read the right way.`,
    say`Outer rings run counter-clockwise, holes clockwise.`,
  );
}

/** Corners within a millimetre of the one before. */
export function repeatedPoints(where: Where, count: number): Finding {
  return mended(
    where,
    "project/repeated-points",
    say`${pluralFirst(count, "corner", "corners")} of feature ${named(where.feature)} ${count === 1 ? "repeats" : "repeat"} the one before; left out.`,
    say`An edge without length has no direction.`,
  );
}

/** Corners on a straight edge. */
export function collinearPoints(where: Where, count: number): Finding {
  return mended(
    where,
    "project/collinear-points",
    say`${pluralFirst(count, "corner", "corners")} of feature ${named(where.feature)} ${count === 1 ? "lies" : "lie"} on a straight edge; left out.`,
    say`Such a corner changes nothing, and the edge counts as one.`,
  );
}

/** Positions with a third number. */
export function heightsDropped(where: Where, features: number): Finding {
  return mended(
    where,
    "project/heights-dropped",
    say`${pluralFirst(features, "feature has", "features have")} heights in the coordinates; they are not used.`,
    say`Rows are laid out in plan view. The heights stay in the file.`,
  );
}

/** Longitudes on both sides of 180. */
export function antimeridian(where: Where): Finding {
  return mended(
    where,
    "project/antimeridian",
    say`The project lies across longitude 180; its longitudes are counted on from one side.`,
    say`Otherwise its two halves would be a whole globe apart.`,
  );
}

/** A geometry collection; `left` names what of it the role has no use for. */
export function collectionFolded(where: Where, left: string | null): Finding {
  return mended(
    where,
    "project/collection-folded",
    say`Feature ${named(where.feature)} is a geometry collection; its parts are taken together as one feature${left === null ? "" : `, except for its ${left}`}.`,
    say`One feature has one role and one set of properties.`,
  );
}

/** A feature without the member "properties". */
export function propertiesMissing(where: Where): Finding {
  return mended(
    where,
    "project/properties-missing",
    say`Feature ${named(where.feature)} has no properties; it is read as if it had an empty list of them.`,
    say`GeoJSON asks for the member, even when it is empty.`,
  );
}

/** A coordinate system named in the old way, and how it was treated. */
export function crsRead(system: string, isLonLat: boolean): Finding {
  return {
    code: isLonLat ? "project/crs-lon-lat" : "project/crs-not-used",
    severity: isLonLat ? "note" : "warning",
    ...wholeFile,
    message: isLonLat
      ? say`The file names the coordinate system ${system}; that is how coordinates are read anyway: longitude, then latitude, in degrees.`
      : say`The file names the coordinate system ${system}; it is not used, and the coordinates are read as longitude and latitude in degrees.`,
    reason: say`GeoJSON has one system only (RFC 7946), longitude and latitude on WGS84; older files could name another.`,
    remedy: isLonLat
      ? say`Nothing needs to be done.`
      : say`Look at the parcel on the map. If it is in the wrong place, export it again in WGS84.`,
  };
}

/** What stands in for the findings of one code that are too many to list. */
export function moreFindings(code: string, severity: Severity, count: number): Finding {
  return {
    code: "project/more-findings",
    severity,
    ...wholeFile,
    message: say`And ${count} more of the same kind (${code}).`,
    reason: say`A long list would hide the rest.`,
    remedy: say`Mend those that are listed first; often the others have the same cause.`,
  };
}

function mended(
  where: Where,
  code: Finding["code"],
  message: Phrase,
  reason: Phrase,
  remedy: Phrase = say`Nothing needs to be done; the file itself is not changed.`,
): Finding {
  return { code, severity: "note", ...where, message, reason, remedy };
}

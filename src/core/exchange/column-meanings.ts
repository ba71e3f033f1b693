import type { Table } from "./tables/table.ts";

/** Columns of the tables with what they mean, each once, in the order they come in; for the text about them. */
export function columnMeanings(tables: readonly Table[]): readonly (readonly [name: string, meaning: string])[] {
  const names = new Set(tables.flatMap(({ columns }) => columns.map(({ name }) => name)));
  return [...names].map((name) => [name, meaningOf(name)]);
}

/** What a column holds, by its name; the words of the name itself where there is no more to say. */
export function meaningOf(name: string): string {
  const known = meanings.get(name) ?? meanings.get(withoutUnit(name));
  if (known !== undefined) return known;
  const end = /^(start|end)(?=[A-Z])/.exec(name)?.[1];
  if (end !== undefined) {
    const rest = name.slice(end.length);
    return `${meaningOf(rest.charAt(0).toLowerCase() + rest.slice(1))}, at the ${end} of the row`;
  }
  const wire = /^(.+)Wire_m$/.exec(name)?.[1];
  if (wire !== undefined) return `metres of ${wire} wire`;
  return words(name);
}

function withoutUnit(name: string): string {
  return name.replace(/_(?:m|ft|usft)$/, "");
}

/** "coilLength_m": "coil length, metres". */
function words(name: string): string {
  const [plain = name, unit] = name.split("_");
  const spaced = plain.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
  const counted = unit === undefined ? undefined : units.get(unit);
  return counted === undefined ? spaced : `${spaced}, ${counted}`;
}

const units: ReadonlyMap<string, string> = new Map([
  ["m", "metres"],
  ["mm", "millimetres"],
  ["m2", "square metres"],
  ["kg", "kilograms"],
  ["deg", "degrees"],
]);

const meanings: ReadonlyMap<string, string> = new Map([
  ["name", "what it is called; unique in these files"],
  ["part", "number of the piece, where an area has several"],
  ["ring", "1 is the outer ring of the piece, others are holes in it"],
  ["corner", "number of the corner along the line or ring; a ring ends at its first corner, which is not repeated"],
  ["longitude", "degrees east of Greenwich, west is negative"],
  ["latitude", "degrees north of the equator, south is negative"],
  ["easting", "east by the numbers of the system"],
  ["northing", "north by the numbers of the system"],
  ["east", "east of the origin of the plan"],
  ["north", "north of the origin of the plan, along the meridian there"],
  ["height_m", "height of the ground, metres"],
  ["role", "what it is"],
  ["block", "the block it belongs to"],
  ["row", "number of the row, without its block"],
  ["number", "counted from the start of the row, or along the branch"],
  ["station_m", "metres from the start of the row (its first end post), or along the branch of the main line"],
  ["slopeStation_m", "the same along the slope of the ground"],
  ["baselineStation_m", "metres along the baseline from its first end"],
  ["baselineOffset_m", "metres to the right of the baseline, to its left below 0"],
  ["sketch", "yes: the outline was walked with a phone, not for staking"],
  ["length_m", "level length, metres"],
  ["groundLength_m", "length along the slope of the ground, metres"],
  ["waterEnd", "the end of the row that meets the main line"],
  ["vines", "how many vines"],
  ["linePosts", "how many posts between the two end posts"],
  ["lateral_m", "metres of drip hose"],
  ["emitters", "how many emitters"],
  ["area_m2", "area, square metres"],
  ["rows", "how many rows"],
  ["bearing_deg", "bearing of the rows from true north, degrees clockwise"],
  ["rowSpacing_m", "row to row, metres"],
  ["branch", "branch of the main line"],
  ["ground_m", "height of the ground, metres"],
  ["pipe_m", "height of the pipe, metres"],
  ["bottom_m", "height of the bottom of the trench, metres"],
  ["depth_m", "depth of the trench, metres"],
  ["note", "what is met there, or what the price list notes"],
  ["article", "what the plan calls the article"],
  ["spec", "what to ask for"],
  ["unit", "what needed, spare and toBuy count"],
  ["needed", "as the plan needs it, without spare"],
  ["spare", "on top of it"],
  ["onHand", "is there already"],
  ["toBuy", "needed and spare, less what is there"],
  ["packages", "as they are bought"],
  ["packageCount", "how many packages"],
  ["price", "of the whole line, or in a price list of one package; empty is not priced"],
  ["mass_kg", "of the whole line, or in a price list of one package, kilograms; empty is not known"],
  ["lift", "how it is carried"],
  ["purpose", "what it is for"],
  ["coil", "number of the coil, in the order of work"],
  ["cut", "number of the cut off the coil, in the order of work"],
  ["run", "which wire or hose of the row"],
  ["from_m", "metres along the run where the piece begins"],
  ["to_m", "metres along the run where the piece ends"],
  ["join", "joined: the piece is not the whole run, it is joined to the next"],
  ["taken_m", "metres that come off the coil"],
  ["left_m", "metres left on the coil after it"],
]);

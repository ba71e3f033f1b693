export const commands = ["plan", "check", "sweep", "export", "compare", "draw", "heights", "import"] as const;
export type Command = (typeof commands)[number];

/** An option of the command line; help and reading both follow from this table. */
export interface Option {
  readonly name: string;
  /** One letter that says the same. */
  readonly short?: string;
  /** What stands after it, or null for a switch. */
  readonly value: string | null;
  readonly isRepeatable?: true;
  readonly help: string;
  readonly commands: readonly Command[];
  /** Setting of the project file that it overrides. */
  readonly path?: string;
}

const all = commands;
/** Those that plan, and may plan with other settings than the file's. */
const planning = commands.filter((command) => command !== "heights" && command !== "import");

/** Overrides with a name of their own, in the order of the help. */
const overrides: readonly Option[] = [
  {
    name: "bearing",
    value: "DEG",
    help: 'row bearing from true north, or "longest-edge", or "best" of the sweep',
    commands: planning,
    path: "rows.bearing",
  },
  { name: "row-spacing", value: "LENGTH", help: "row to row", commands: planning, path: "rows.rowSpacing" },
  {
    name: "vine-spacing",
    value: "LENGTH",
    help: "vine to vine along the row",
    commands: planning,
    path: "rows.vineSpacing",
  },
  {
    name: "headland",
    value: "LENGTH",
    help: "room to turn, kept free at row ends along the row",
    commands: planning,
    path: "rows.headland",
  },
  {
    name: "setback",
    value: "LENGTH",
    help: "distance kept from every edge; an edge feature's and a parcel's own setback still win",
    commands: planning,
    path: "ground.setback",
  },
  {
    name: "min-row",
    value: "LENGTH",
    help: 'shortest row worth planting, or so many vines: "10 vines"',
    commands: planning,
    path: "rows.minRow",
  },
  {
    name: "row-end",
    value: "WHERE",
    help: "all (to the last millimetre), vines (whole vine spacings) or bays (whole bays)",
    commands: planning,
    path: "rows.rowEnd",
  },
];

/** Every option. */
export const options: readonly Option[] = [
  {
    name: "json",
    value: null,
    help: "one JSON object on standard output and nothing else",
    commands: ["plan", "check", "sweep", "compare"],
  },
  {
    name: "with",
    value: "PATH=VALUE",
    isRepeatable: true,
    help: "a setting that only the second plan has; may be given again",
    commands: ["compare"],
  },
  {
    name: "what-if",
    value: "NAME",
    isRepeatable: true,
    help: "a change that only the second plan has, by name; without a name that fits, all are listed",
    commands: ["compare"],
  },
  { name: "row", value: "ID", help: "the row to draw; else the first", commands: ["draw"] },
  { name: "trench", value: null, help: "the profile of the trench in place of a row", commands: ["draw"] },
  {
    name: "branch",
    value: "NAME",
    help: "the branch of the trench to draw: main, a, b and so on; else main",
    commands: ["draw"],
  },
  {
    name: "lateral",
    value: "ROW",
    help: "pressure and flow of the emitters along the hose of a row",
    commands: ["draw"],
  },
  {
    name: "line",
    value: "SET",
    help: "pressure and flow along main line and submain to the last row of a set",
    commands: ["draw"],
  },
  { name: "supply", value: null, help: "what the water gives against what each set of rows takes", commands: ["draw"] },
  {
    name: "season",
    value: null,
    help: "the water of a block through the year; of which one: --block",
    commands: ["draw"],
  },
  {
    name: "scale",
    value: "N",
    help: "lengths 1:N on paper: 50 or 20 for a row, 500 or 200 for the trench; else as wide as a page",
    commands: ["draw"],
  },
  {
    name: "raise",
    value: "N",
    help: "heights of the trench 1, 5 or 10 times as large as lengths; else as large as fits",
    commands: ["draw"],
  },
  {
    name: "prices",
    value: "FILE",
    help: "a price list, as a table or JSON, in place of the project's own",
    commands: ["plan", "check", "export", "compare"],
  },
  { name: "out", value: "DIR", help: "write the files of the plan into this folder", commands: ["plan", "export"] },
  {
    name: "units",
    value: "us|metric|metric-bar|metric-head",
    help: "units of tables and sentences; else those of the project",
    commands: ["plan", "check", "sweep", "compare", "draw"],
  },
  { name: "date", value: "YYYY-MM-DD", help: "date of the compass reading; else today", commands: ["plan"] },
  { name: "step", value: "DEG", help: "step of the sweep, 1 or finer down to 0.1; else 1", commands: ["sweep"] },
  {
    name: "block",
    value: "ID",
    help: "only this block; of a what-if, the block it changes",
    commands: ["sweep", "compare", "draw"],
  },
  {
    name: "as",
    value: "FORMAT",
    help: "geojson, gpx, csv, shapefile, dxf and more: a name that is none lists them all; else geojson",
    commands: ["export"],
  },
  {
    name: "of",
    value: "THINGS",
    help: "parcels, blocks, rows, vines, stakes, posts, anchors, pegs, marks, route, pipes, fittings, stations, materials, coils, prices or plan; several with commas; else rows",
    commands: ["export"],
  },
  {
    name: "rows",
    value: "ROWS",
    help: '"1-10, 14a, east-3": numbers, ranges and names of the rows that go out, with what stands along them; else all',
    commands: ["export"],
  },
  {
    name: "names",
    value: "PATTERN",
    help: 'what things are called: "R{row}{code}{number:2}" of {id}, {kind}, {code}, {block}, {row}, {number}; else what the format is used to',
    commands: ["export"],
  },
  {
    name: "name-length",
    value: "N|none",
    help: "longest name, letters; else what the format is used to, such as 10 for gpx",
    commands: ["export"],
  },
  {
    name: "points-a-file",
    value: "N",
    help: "split gpx at so many points a file: old handhelds hold 500; else one file",
    commands: ["export"],
  },
  {
    name: "join",
    value: "LAYER",
    isRepeatable: true,
    help: 'take the points of a layer, in their order, as the corners of one outline; "points" for all of a file',
    commands: ["import"],
  },
  {
    name: "crs",
    value: "SYSTEM",
    help: '"EPSG:32610", "utm" for the zone of the place, "local" for the plane of the project, or a proj4 text; else degrees, and local where a format has none',
    commands: ["export"],
  },
  {
    name: "unit",
    value: "m|ft|us-ft",
    help: "what the local plane is counted in; else metres",
    commands: ["export"],
  },
  {
    name: "order",
    value: "northing-first|easting-first",
    help: "which comes first in survey-csv; else northing",
    commands: ["export"],
  },
  { name: "no-heights", value: null, help: "no heights, also where they are known", commands: ["export"] },
  {
    name: "peg-beyond",
    value: "LENGTH",
    help: "how far beyond the anchor an offset peg stands; else 1 m",
    commands: ["export"],
  },
  {
    name: "baseline",
    value: "LINE",
    help: 'station and offset of every point from two marks, "gate pin, oak nail", or from a row, "row 1"',
    commands: ["export"],
  },
  {
    name: "together",
    value: null,
    help: "all kinds in one geojson file; on standard output they always are",
    commands: ["export"],
  },
  {
    name: "unit",
    value: "m|ft|us-ft",
    help: "what the heights in the file are counted in; files often do not say, or say it wrong",
    commands: ["heights"],
  },
  {
    name: "crs",
    value: "PROJ4",
    help: 'the file\'s coordinate system in place of its own: "+proj=utm +zone=10 +datum=NAD83", or "EPSG:26910"',
    commands: ["heights"],
  },
  {
    name: "out",
    short: "o",
    value: "FILE",
    help: "write the project into this file; else to standard output",
    commands: ["heights"],
  },
  {
    name: "into",
    value: "PROJECT",
    help: "the project that things are taken into; else a new one",
    commands: ["import"],
  },
  {
    name: "role",
    value: "WHAT=ROLE",
    isRepeatable: true,
    help: 'what things are, by their name, their layer, or "points", "lines", "areas"; ROLE alone is for all, "none" leaves out; may be given again',
    commands: ["import"],
  },
  {
    name: "crs",
    value: "SYSTEM",
    help: 'coordinate system of the file\'s numbers, where it does not say: "EPSG:26910", or a proj4 text',
    commands: ["import"],
  },
  {
    name: "unit",
    value: "m|ft|us-ft",
    help: "what lengths in the file are counted in, where it does not say",
    commands: ["import"],
  },
  {
    name: "swap",
    value: "yes|no",
    help: "whether latitude and longitude, or northing and easting, stand the other way round",
    commands: ["import"],
  },
  {
    name: "units",
    value: "us|metric",
    help: "units of a new project, and of what is said; else metric, or those of the project",
    commands: ["import"],
  },
  {
    name: "out",
    short: "o",
    value: "FILE",
    help: "write the project into this file; else to standard output",
    commands: ["import"],
  },
  ...overrides,
  {
    name: "set",
    value: "PATH=VALUE",
    isRepeatable: true,
    help: "any other setting of the project file; may be given again",
    commands: planning,
  },
  { name: "help", value: null, help: "this page", commands: all },
];

import { type Command, options } from "./options.ts";

const purposes: Readonly<Record<Command, string>> = {
  plan: "rows, counts and materials of a parcel, as tables, as JSON, as files",
  check: "what there is to say about a file: notes, warnings, errors",
  sweep: "what the parcel would hold at every row bearing",
  export: "rows, vines, posts, marks, the main line, materials and more in an open format",
  compare: "two plans side by side: quantities, cost, and what only one of them warns of",
  draw: "a row from its side or the profile of the trench, to scale, or charts of the water, as an SVG drawing",
  heights: "a project with the heights of a GeoTIFF file in it",
  import: "a project with outlines, lines and points out of files of other formats",
};

const more: Readonly<Record<Command, string>> = {
  plan: `Prints the plan, or with --json one object of the schema in DEVELOPERS.md, also when there are errors (then "rows" is empty).
With --out it writes rows, vines, posts, route, pipes and fittings as .geojson, rows, stations, materials and coils as .csv with a text about
them, and plan.json into DIR; with several inputs each gets a folder of its own there.`,
  check: `Reads and plans every file and prints only what there is to say. With --json one object with "findings".`,
  sweep: `Prints a line for every bearing: rows, row length, mean row, rows too short, share planted, and the score: row length less a
metre-equivalent for every row's two ends. The best bearing outside the locked ranges is marked.`,
  compare: `Give two files, or one file and what the second plan has that the first has not: --with PATH=VALUE, --what-if NAME.
Every override, --set too, holds for both.`,
  draw: `Writes to standard output. Heights and lengths of a row are to one scale unless they are too flat to see; the sag of wires is drawn larger;
with --trench it is the ground, the pipe and the bottom of the trench, with what to dig at every station. The drawing says what is drawn larger.
--lateral, --line, --supply and --season are charts of the water; what they need of it has to be stated in the file or with --set.`,
  heights: `Give a project and a GeoTIFF of heights, or a GPX track with heights. Only the ground around the parcels is read; the heights become a feature of the project, in
place of those taken from a file of that name before. What the heights are counted in has to be stated: a wrong unit makes every slope
wrong by more than three times.`,
  import: `Reads GeoJSON, GPX, KML, KMZ, CSV, XLSX, shapefiles (zipped), GeoPackage, DXF, LandXML and ISO 11783-10 task data. Each thing gets the role
it most likely plays, or the one --role gives it; what became of each is said on standard error. What a file leaves open (its coordinate
system, a unit, the order of numbers) is asked and never guessed: then nothing is written until an option answers it.`,
  export: `Writes to standard output, or with --out to files named after what is in them; a text beside them says datum, system and units where the
format cannot, and goes to standard error where the file goes to standard output. Several things as geojson make one collection there.
What a format has no place for, and names that it cannot keep, are said on standard error.`,
};

const examples: Readonly<Record<Command, string>> = {
  plan: 'tautrow plan parcel.geojson --bearing 24 --row-spacing "8 ft" --out out',
  check: "tautrow check parcel.geojson --json",
  sweep: "tautrow sweep parcel.geojson --step 1",
  compare: "tautrow compare project.geojson --what-if gripper-at-the-end",
  draw: "tautrow draw project.geojson --trench --raise 10 > trench.svg",
  heights: "tautrow heights project.geojson hill.tif --unit m -o project.geojson",
  import: "tautrow import survey.kml trees.csv --into project.geojson --role Trees=obstacle -o project.geojson",
  export: "tautrow export parcel.geojson --of rows,posts --as gpx --points-a-file 500 --out handheld",
};

const closing = `FILE is a project or any GeoJSON with a polygon. Several files, - for standard input, and GeoJSON text sequences work too.
A number without a unit is in metres or degrees; "8 ft", "7 ft 6 in", "2.4 m", "0.5 gal/h" say theirs.
Exit code: 0 fine, 1 there is an error in the input, 2 wrong usage or a path that cannot be read, 70 a bug.
`;

/** Help for all commands. */
export function generalHelp(): string {
  const lines = Object.entries(purposes).map(([command, purpose]) => `  ${command.padEnd(8)}${purpose}\n`);
  return `tautrow COMMAND FILE... [options]: plans trellised vine rows on an irregular parcel

${lines.join("")}
"tautrow COMMAND --help" lists the options of a command.
${closing}`;
}

/** Help for one command. */
export function commandHelp(command: Command): string {
  const own = options.filter((option) => option.commands.includes(command));
  const heads = own.map(({ name, short, value }) => {
    return `--${name}${short === undefined ? "" : `, -${short}`}${value === null ? "" : ` ${value}`}`;
  });
  const width = Math.max(...heads.map((head) => head.length));
  const lines = own.map((option, i) => `  ${(heads[i] ?? "").padEnd(width)}  ${option.help}\n`);
  return `tautrow ${command} FILE... [options]: ${purposes[command]}

${more[command]}

${lines.join("")}
For example: ${examples[command]}
${closing}`;
}

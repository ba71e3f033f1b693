import type { Format } from "../format.ts";

/** point, northing, easting, height, code. */
export const surveyCsv: Format = {
  name: "survey-csv",
  title: "point, northing, easting, height, code",
  usedFor: "survey controllers",
  extension: "csv",
  mediaType: "text/csv; charset=us-ascii; header=absent",
  holds: ["vines", "stakes", "posts", "anchors", "pegs", "marks", "fittings", "stations"],
  choices: ["system", "unit", "naming", "nameLength", "order", "heights"],
  naming: { one: "R{row}{code}{number:2}", several: "{block:3}{row}{code}{number:2}" },
  nameLength: 16,
  letters: "ascii",
  statesItself: false,
  places: "chosen, no degrees",
  write: () => ({ files: [], findings: [] }),
};

import type { Format } from "../format.ts";

/** LandXML 1.2. */
export const landXml: Format = {
  name: "landxml",
  title: "LandXML 1.2",
  usedFor: "machine control and survey offices",
  extension: "xml",
  mediaType: "application/xml",
  holds: ["parcels", "posts", "anchors", "pegs", "marks", "route", "stations"],
  choices: ["system", "unit", "naming", "heights"],
  naming: { one: "{id}", several: "{id}" },
  nameLength: null,
  letters: "any",
  statesItself: true,
  places: "chosen, no degrees",
  write: () => ({ files: [], findings: [] }),
};

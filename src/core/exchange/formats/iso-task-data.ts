import type { Format } from "../format.ts";

/** ISO 11783-10 task data. */
export const isoTaskData: Format = {
  name: "iso-task-data",
  title: "ISO 11783-10 task data",
  usedFor: "tractor terminals",
  extension: "zip",
  mediaType: "application/zip",
  holds: ["parcels", "blocks", "rows"],
  choices: ["naming", "nameLength"],
  naming: { one: "Row {row}", several: "{block} {row}" },
  nameLength: 32,
  letters: "any",
  statesItself: true,
  places: "degrees",
  write: () => ({ files: [], findings: [] }),
};

import type { Format } from "../format.ts";

/** JSON. */
export const json: Format = {
  name: "json",
  title: "JSON",
  usedFor: "programs",
  extension: "json",
  mediaType: "application/json",
  holds: ["plan", "prices"],
  choices: [],
  naming: { one: "{id}", several: "{id}" },
  nameLength: null,
  letters: "any",
  statesItself: true,
  places: "degrees",
  write: () => ({ files: [], findings: [] }),
};

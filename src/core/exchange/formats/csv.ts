import type { Format } from "../format.ts";
import { layerKinds } from "../layers/layer.ts";
import { listKinds } from "../lists/list.ts";

/** CSV tables. */
export const csvTables: Format = {
  name: "csv",
  title: "CSV tables",
  usedFor: "spreadsheets, and survey controllers that read heads",
  extension: "csv",
  mediaType: "text/csv; charset=utf-8; header=present",
  holds: [...layerKinds, ...listKinds],
  choices: ["system", "unit", "naming", "heights", "baseline"],
  naming: { one: "{id}", several: "{id}" },
  nameLength: null,
  letters: "any",
  statesItself: false,
  places: "chosen",
  write: () => ({ files: [], findings: [] }),
};

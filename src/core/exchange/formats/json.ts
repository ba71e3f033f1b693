import type { Format, HandOverJob, OutFile } from "../format.ts";
import { planJson } from "../plan-json.ts";
import { priceListJson } from "../price-list.ts";

const mediaType = "application/json";

/** JSON: the whole plan by the schema of DEVELOPERS.md, and the price list to be filled in. */
export const json: Format = {
  name: "json",
  word: "JSON",
  title: "JSON",
  usedFor: "programs",
  extension: "json",
  mediaType,
  holds: ["plan", "prices"],
  usual: ["plan"],
  choices: [],
  naming: { one: "{id}", several: "{id}" },
  nameLength: null,
  letters: "any",
  statesItself: true,
  places: "degrees",
  write: (job) => ({ files: filesOf(job), findings: [] }),
};

function filesOf({ plan, documents, lists }: HandOverJob): readonly OutFile[] {
  return [
    ...(documents.includes("plan") ? [fileOf("plan", () => `${JSON.stringify(planJson(plan), null, 2)}\n`)] : []),
    ...(lists.some(({ kind }) => kind === "prices") ? [fileOf("prices", () => priceListJson(plan))] : []),
  ];
}

function fileOf(stem: string, text: () => string): OutFile {
  return { name: `${stem}.json`, mediaType, content: { kind: "chunks", chunks: () => [text()] } };
}

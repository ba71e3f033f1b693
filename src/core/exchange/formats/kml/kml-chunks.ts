import { aboutParts, countOf } from "../../about.ts";
import { featureGeometry } from "../../feature-geometry.ts";
import { type Format, featuresAChunk, type HandOverJob } from "../../format.ts";
import type { Column, Layer, LayerFeature, LayerKind } from "../../layers/layer.ts";
import { xmlText } from "../../xml.ts";
import { kmlGeometry } from "./kml-geometry.ts";

/**
 * A KML text piece by piece. Order of elements: OGC 07-147r2 (KML 2.2), sections 9.1 to 9.12. Places lie on the ground, whatever
 * their heights: those count from the project's own zero, not from the sea.
 */
export function* kmlChunks(job: HandOverJob, format: Format, file: string): Generator<string> {
  const { layers, plan } = job;
  yield [
    `<?xml version="1.0" encoding="UTF-8"?>`,
    `<kml xmlns="http://www.opengis.net/kml/2.2">`,
    "<Document>",
    `<name>${xmlText(plan.project.name === "" ? "Plan of rows" : plan.project.name)}</name>`,
    `<description>${xmlText(description(job, format, file))}</description>`,
    ...layers.map(({ kind }) => styleOf(kind)),
    ...layers.map(schemaOf),
    "",
  ].join("\n");
  for (const layer of layers) {
    let lines = [`<Folder><name>${layer.kind}</name>`];
    for (const feature of layer.features()) {
      lines.push(placemark(job, layer, feature));
      if (lines.length < featuresAChunk) continue;
      yield `${lines.join("\n")}\n`;
      lines = [];
    }
    yield `${[...lines, "</Folder>"].join("\n")}\n`;
  }
  yield "</Document>\n</kml>\n";
}

function description(job: HandOverJob, format: Format, file: string): string {
  const files = [[file, job.layers.map(countOf).join(", ")] as const];
  const notes = ["Everything is drawn on the ground; heights stand with each place where they are known."];
  return aboutParts(job, format, { stem: "plan", files, columns: [], notes })
    .map(({ head, lines }) => `${head}: ${lines.join(" ")}`)
    .join("\n");
}

/** Colours of the parts in KML's order: alpha, blue, green, red. */
const colours: Readonly<Record<LayerKind, string>> = {
  parcels: "ff1f4e79",
  blocks: "ff3c8c46",
  rows: "ff2e7d32",
  vines: "ff3fa34d",
  stakes: "ff8aa66b",
  posts: "ff2f5f8f",
  anchors: "ff1b3a5c",
  pegs: "ff2ca7d8",
  marks: "ff2222cc",
  route: "ffb0641e",
  pipes: "ffc98a3a",
  fittings: "ff9c4f10",
  stations: "ff7a7a7a",
};

function styleOf(kind: LayerKind): string {
  const colour = `<color>${colours[kind]}</color>`;
  return [
    `<Style id="style-${kind}">`,
    `<IconStyle>${colour}<scale>0.6</scale></IconStyle><LabelStyle><scale>0.7</scale></LabelStyle>`,
    `<LineStyle>${colour}<width>2</width></LineStyle><PolyStyle>${colour}<fill>0</fill></PolyStyle></Style>`,
  ].join("");
}

const types: Readonly<Record<Column["type"], string>> = {
  text: "string",
  number: "double",
  whole: "int",
  yes: "bool",
};

function schemaOf({ kind, columns }: Layer): string {
  const fields = [{ name: "id", type: "text" as const }, ...columns];
  return [
    `<Schema name="${kind}" id="columns-${kind}">`,
    ...fields.map(({ name, type }) => `<SimpleField type="${types[type]}" name="${xmlText(name)}"/>`),
    "</Schema>",
  ].join("");
}

function placemark({ names }: HandOverJob, { kind, columns }: Layer, feature: LayerFeature): string {
  const values = [
    ["id", feature.id] as const,
    ...columns.map(({ name, type }, i) => {
      const value = feature.values[i] ?? null;
      return [name, value === true && type === "yes" ? 1 : value] as const;
    }),
  ];
  return [
    `<Placemark><name>${xmlText(names.of(feature))}</name><styleUrl>#style-${kind}</styleUrl>`,
    `<ExtendedData><SchemaData schemaUrl="#columns-${kind}">`,
    ...values.map(([name, value]) =>
      value === null ? "" : `<SimpleData name="${xmlText(name)}">${xmlText(String(value))}</SimpleData>`,
    ),
    `</SchemaData></ExtendedData>${kmlGeometry(featureGeometry(feature.geometry))}</Placemark>`,
  ].join("");
}

import type { Finding } from "../../finding.ts";
import { aboutText, countOf } from "../about.ts";
import { meaningOf } from "../column-meanings.ts";
import { type Format, type HandOverJob, stemOf } from "../format.ts";
import { type Layer, layerKinds } from "../layers/layer.ts";
import { namedColumns } from "../named-columns.ts";
import { apart, statements } from "./geopackage/statements.ts";
import { heightsPartlyKnown } from "./shapefile/findings.ts";

/** Lines and outlines of a layer that are looked at before anything is written: a few milliseconds. */
const looked = 5000;

/**
 * GeoPackage 1.3 (OGC 12-128r17): a table a layer, without spatial index, which is an extension. The database is made by a door that has SQLite.
 * Findings: `exchange/heights-partly-known`.
 */
export const geoPackage: Format = {
  name: "geopackage",
  word: "GeoPackage",
  title: "GeoPackage 1.3",
  usedFor: "GIS",
  extension: "gpkg",
  mediaType: "application/geopackage+sqlite3",
  holds: layerKinds,
  usual: ["parcels", "blocks", "rows", "vines", "posts", "route"],
  choices: ["system", "unit", "naming", "heights", "baseline"],
  naming: { one: "{id}", several: "{id}" },
  nameLength: null,
  letters: "any",
  statesItself: true,
  places: "chosen",
  write: (job) => {
    const layers = job.layers.filter(({ count }) => count > 0);
    if (layers.length === 0) return { files: [], findings: [] };
    const stem = stemOf(layers);
    const about = aboutOf(job, layers, stem);
    return {
      files: [
        {
          name: `${stem}.gpkg`,
          mediaType: geoPackage.mediaType,
          content: { kind: "database", statements: () => statements(job, layers, about) },
        },
      ],
      findings: partlyKnown(layers),
    };
  },
};

function aboutOf(job: HandOverJob, layers: readonly Layer[], stem: string): string {
  const names = new Set(layers.flatMap((layer) => apart(namedColumns(layer, job.names).columns)));
  return aboutText(job, geoPackage, {
    stem,
    files: layers.map((layer) => [layer.kind, countOf(layer)]),
    columns: [...names].map((name) => [name, meaningOf(name)]),
    notes: [],
  });
}

/** A point has its own height or none; a line or an outline has them everywhere or nowhere. */
function partlyKnown(layers: readonly Layer[]): readonly Finding[] {
  const partly = layers.filter((layer) => {
    let left = looked;
    if (layer.shape === "point") return false;
    for (const { geometry } of layer.features()) {
      if (left-- === 0) return false;
      const places =
        geometry.shape === "line" ? geometry.places : geometry.shape === "area" ? geometry.polygons.flat(2) : [];
      if (new Set(places.map(({ height_m }) => height_m === null)).size > 1) return true;
    }
    return false;
  });
  const becomes = "lines and outlines with such a place go out without heights";
  return partly.length === 0
    ? []
    : [
        heightsPartlyKnown(
          partly.map(({ kind }) => kind),
          becomes,
        ),
      ];
}

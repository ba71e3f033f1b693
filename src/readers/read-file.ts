import { failure, type Outcome } from "../core/outcome.ts";
import { fileTooLarge, unknownFormat } from "./file-findings.ts";
import { csvReader } from "./formats/csv.ts";
import { dxfReader } from "./formats/dxf.ts";
import { geoJsonReader } from "./formats/geojson.ts";
import { geoPackageReader } from "./formats/geopackage.ts";
import { gpxReader } from "./formats/gpx.ts";
import { isoTaskDataReader } from "./formats/iso-task-data.ts";
import { kmlReader } from "./formats/kml.ts";
import { kmzReader } from "./formats/kmz.ts";
import { landXmlReader } from "./formats/landxml.ts";
import { shapefileReader } from "./formats/shapefile.ts";
import { xlsxReader } from "./formats/xlsx.ts";
import type { FoundFile, NamedBytes, Reader, ReadingAnswers, ReadingFollowed } from "./reading.ts";

/** Every format that is read; a new one is a new file and a new line here. Of several that claim a file the first has it. */
export const readers: readonly Reader[] = [
  geoJsonReader,
  gpxReader,
  kmlReader,
  kmzReader,
  isoTaskDataReader,
  landXmlReader,
  geoPackageReader,
  shapefileReader,
  xlsxReader,
  dxfReader,
  csvReader,
];

/** Bytes at the beginning of a file that tell its format. */
const head_bytes = 4096;
/** Bytes at the end of an archive that are looked through for names of files in it. */
const directory_bytes = 65_536;

/**
 * What a file holds, by whichever reader knows it: by its beginning, else by the ending of its name. Never throws for what a file can
 * hold. Findings: `readers/unknown-format`, `readers/file-too-large`, and those of the format's reader.
 */
export async function readFile(
  file: NamedBytes,
  answers: ReadingAnswers,
  followed: ReadingFollowed = {},
): Promise<Outcome<FoundFile>> {
  const head = await beginning(file);
  const ending = /\.([^.]+)$/.exec(file.name)?.[1]?.toLowerCase() ?? "";
  const claimed = readers.filter((reader) => reader.begins(head));
  const named = readers.filter(({ endings }) => endings.includes(ending));
  const reader = claimed.find((each) => named.includes(each)) ?? claimed[0] ?? named[0];
  if (reader === undefined) return failure([unknownFormat(file.name, readers)]);
  if (file.size > reader.most_bytes) return failure([fileTooLarge(file.name, file.size, reader)]);
  return reader.read(file, answers, followed);
}

/** The beginning of a file; of an archive its end as well, where it names what it holds. */
async function beginning(file: NamedBytes): Promise<string> {
  const head = latin1(await file.slice(0, Math.min(head_bytes, file.size)).arrayBuffer());
  if (!head.startsWith("PK\u{3}\u{4}") || file.size <= head_bytes) return head;
  return head + latin1(await file.slice(Math.max(head_bytes, file.size - directory_bytes), file.size).arrayBuffer());
}

function latin1(bytes: ArrayBuffer): string {
  return new TextDecoder("latin1").decode(bytes);
}

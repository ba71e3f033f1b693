import { closeSync, openSync, writeSync } from "node:fs";
import { Zip, ZipDeflate, ZipPassThrough } from "fflate";

/** A file too large, or made to look small: what it is called, how it is written. */
export interface LargeFile {
  readonly name: string;
  readonly told: string;
  /** True when it can be written in any size. */
  readonly isOfAnySize: boolean;
  /** Writes it piece by piece through `put`; it never stands in memory. */
  write(put: (piece: string | Uint8Array) => void, size_bytes: number): void;
}

const mega = 1_000_000;
/** What the files come to, bytes; archives unpack to more. */
export const large_bytes = 200 * mega;

const geoJsonHead = '{"type":"FeatureCollection","features":[\n';
const geoJsonPoint =
  '{"type":"Feature","properties":{"name":"oak"},"geometry":{"type":"Point","coordinates":[-122.71650001,38.29210001]}}';
const gpxHead = '<?xml version="1.0"?><gpx version="1.1" creator="x" xmlns="http://www.topografix.com/GPX/1/1">';
const gpxPoint = '<wpt lat="38.29210001" lon="-122.71650001"><name>oak</name></wpt>\n';
const kmlHead = '<?xml version="1.0"?><kml xmlns="http://www.opengis.net/kml/2.2"><Document>';
const kmlPoint =
  "<Placemark><name>oak</name><Point><coordinates>-122.71650001,38.29210001</coordinates></Point></Placemark>\n";
const bomb =
  '<!DOCTYPE kml [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;&a;&a;"><!ENTITY c "&b;&b;&b;&b;&b;&b;&b;&b;&b;&b;">]>';
const landXmlHead =
  '<?xml version="1.0"?><LandXML xmlns="http://www.landxml.org/schema/LandXML-1.2" version="1.2"><CgPoints>';
const landXmlPoint = '<CgPoint name="1">4238000.001 512000.001 101.5</CgPoint>\n';
const dxfHead = "0\nSECTION\n2\nENTITIES\n";
const dxfPoint = "0\nPOINT\n8\nVINES\n10\n512000.001\n20\n4238000.001\n30\n0\n";
const csvHead = "name,longitude,latitude\r\n";
const csvPoint = "oak,-122.71650001,38.29210001\r\n";

/** All of them. */
export const largeFiles: readonly LargeFile[] = [
  whole("points.geojson", "GeoJSON, whole", geoJsonHead, `${geoJsonPoint},\n`, `${geoJsonPoint}]}\n`),
  whole("cut.geojson", "GeoJSON, cut off", geoJsonHead, `${geoJsonPoint},\n`, ""),
  whole("deep.geojson", "GeoJSON, brackets in brackets", '{"type":"FeatureCollection","features":', "[[[[[[[[[[", ""),
  whole("one-word.geojson", "GeoJSON, one endless name", '{"type":"FeatureCollection","name":"', "aaaaaaaaaa", ""),
  whole("points.gpx", "GPX, whole", gpxHead, gpxPoint, "</gpx>"),
  whole("cut.gpx", "GPX, cut off", gpxHead, gpxPoint, "<wpt lat="),
  whole("points.kml", "KML, whole", kmlHead, kmlPoint, "</Document></kml>"),
  whole("entities.kml", "KML with entities of its own", `<?xml version="1.0"?>${bomb}<kml>`, "&c;&c;&c;&c;", "</kml>"),
  whole("deep.kml", "KML, folders in folders", kmlHead, "<Folder>", ""),
  whole("points.xml", "LandXML, whole", landXmlHead, landXmlPoint, "</CgPoints></LandXML>"),
  whole("points.dxf", "DXF, whole", dxfHead, dxfPoint, "0\nENDSEC\n0\nEOF\n"),
  whole("points.csv", "table, whole", csvHead, csvPoint, ""),
  whole("one-line.csv", "table, one endless line", csvHead, "38.29210001,", ""),
  whole("open-quote.csv", "table, a quote never closed", `${csvHead}"`, csvPoint, ""),
  whole("nothing.gpkg", "GeoPackage of zeros", "SQLite format 3\0", "\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0", ""),
  ...["shp", "zip", "kmz", "xlsx", "gpkg", "dxf", "kml", "gpx", "csv", "geojson", "landxml", "json", "xml"].map(
    (ending) => whole(`zeros.${ending}`, `zeros called .${ending}`, "", "\0".repeat(64), ""),
  ),
  bombed("bomb.kmz", "doc.kml", kmlHead, kmlPoint),
  bombed("bomb.zip", "rows.shp", "", "\0".repeat(100)),
  bombed("bomb-task.zip", "TASKDATA/TASKDATA.XML", '<?xml version="1.0"?><ISO11783_TaskData>', "<PFD/>"),
  bombed("bomb.xlsx", "xl/worksheets/sheet1.xml", "<worksheet><sheetData>", "<row><c><v>1</v></c></row>"),
  {
    name: "many.zip",
    told: "archive of 60,000 files",
    isOfAnySize: false,
    write: (put) =>
      archive(put, (zip) => {
        for (let i = 0; i < 60_000; i++) {
          const entry = new ZipPassThrough(`../../${i}.shp`);
          zip.add(entry);
          entry.push(new Uint8Array(10), true);
        }
      }),
  },
];

function whole(name: string, told: string, head: string, piece: string, tail: string): LargeFile {
  return {
    name,
    told,
    isOfAnySize: true,
    write: (put, size_bytes) => {
      put(head);
      const many = piece.repeat(Math.floor((size_bytes - head.length - tail.length) / 20 / piece.length));
      for (let i = 0; i < 20; i++) put(many);
      put(tail);
    },
  };
}

/** A small archive with one file in it that unpacks to a gigabyte. */
function bombed(name: string, inside: string, head: string, piece: string): LargeFile {
  return {
    name,
    told: `archive that unpacks to 1 GB (${inside})`,
    isOfAnySize: false,
    write: (put) =>
      archive(put, (zip) => {
        const entry = new ZipDeflate(inside, { level: 6 });
        zip.add(entry);
        const bytes = new TextEncoder().encode(piece.repeat(Math.ceil(mega / piece.length)));
        entry.push(new TextEncoder().encode(head));
        for (let written = 0; written < 5 * large_bytes; written += bytes.length) entry.push(bytes);
        entry.push(new Uint8Array(0), true);
      }),
  };
}

function archive(put: (piece: Uint8Array) => void, fill: (zip: Zip) => void): void {
  const zip = new Zip((problem, piece) => {
    if (problem !== null) throw problem;
    put(piece);
  });
  fill(zip);
  zip.end();
}

/** Things in a full file: fewer than its reader takes. */
const [many, fewer] = [250_000, 190_000];

/** A sound file of a format as large as its reader takes, with long remarks that fill it up; null where none is made here. */
export function fullFile(ending: string): LargeFile | null {
  const parts = full[ending];
  if (parts === undefined) return null;
  const { head, piece, tail, count } = parts;
  return {
    name: `full.${ending}`,
    told: `as large as is read, ${count} points`,
    isOfAnySize: false,
    write: (put, size_bytes) => {
      const room = (size_bytes - head.length - tail.length) / count - piece("").length - 1;
      const one = piece("x".repeat(Math.max(0, Math.floor(room))));
      const step = 1000;
      put(head);
      for (let i = 0; i < count; i += step) put(one.repeat(step));
      put(tail);
    },
  };
}

interface FullParts {
  readonly head: string;
  readonly piece: (remark: string) => string;
  readonly tail: string;
  readonly count: number;
}

const full: Readonly<Record<string, FullParts>> = {
  geojson: {
    head: geoJsonHead,
    piece: (remark) => `${geoJsonPoint.replace("oak", `oak${remark}`)},\n`,
    tail: `${geoJsonPoint}]}\n`,
    count: many,
  },
  gpx: { head: gpxHead, piece: (remark) => gpxPoint.replace("oak", `oak${remark}`), tail: "</gpx>", count: many },
  kml: {
    head: kmlHead,
    piece: (remark) => kmlPoint.replace("oak", `oak${remark}`),
    tail: "</Document></kml>",
    count: many,
  },
  landxml: {
    head: landXmlHead,
    piece: (remark) => landXmlPoint.replace('name="1"', `name="1${remark}"`),
    tail: "</CgPoints></LandXML>",
    count: fewer,
  },
  dxf: { head: dxfHead, piece: () => dxfPoint, tail: "0\nENDSEC\n0\nEOF\n", count: fewer },
  csv: { head: csvHead, piece: (remark) => csvPoint.replace("oak", `oak${remark}`), tail: "", count: many },
};

/** Writes a file to the disk. */
export function writeLarge(path: string, { write }: LargeFile, size_bytes: number): void {
  const file = openSync(path, "w");
  try {
    write((piece) => {
      writeSync(file, typeof piece === "string" ? new TextEncoder().encode(piece) : piece);
    }, size_bytes);
  } finally {
    closeSync(file);
  }
}

import { failure } from "../../core/outcome.ts";
import { brokenFile } from "../file-findings.ts";
import type { Reader } from "../reading.ts";
import { mostEntries, unzipped } from "../unzip.ts";
import { wholeBytes } from "../xml-file.ts";
import { xmlLetters } from "../xml-letters.ts";
import { zipDirectory } from "../zip-directory.ts";
import { othersInside } from "./kml/findings.ts";
import { kmlText } from "./kml/kml-text.ts";
import { kmlReader } from "./kml.ts";

const title = "KMZ (KML 2.2, packed)";

/**
 * KMZ: the first KML of the archive, whatever it is called; pictures are left where they are. Findings: `readers/others-inside`,
 * `readers/letters-differ`, and those of `unzip.ts` and `kml-text.ts`.
 */
export const kmzReader: Reader = {
  title,
  endings: ["kmz"],
  most_bytes: 50e6,
  begins: (head) => head.startsWith("PK\u{3}\u{4}") && head.includes("doc.kml"),
  read: async (file, answers, followed) => {
    const { name } = file;
    const bytes = await wholeBytes(file);
    const texts = textsIn(bytes);
    const [first] = texts;
    if (first === undefined) {
      const outcome = unzipped(bytes, name, () => false);
      return outcome.ok ? failure([brokenFile(name, title, "there is no KML in it")]) : outcome;
    }
    const files = unzipped(bytes, name, (path) => path === first, kmlReader.most_bytes);
    if (!files.ok) return files;
    const letters = xmlLetters(files.value[0]?.bytes ?? new Uint8Array(), name, title);
    if (!letters.ok) return letters;
    const read = await kmlText(letters.value, { name, title }, answers, followed);
    const others = texts.length === 1 ? [] : [othersInside(name, first, texts.slice(1))];
    return { ...read, findings: [...letters.findings, ...others, ...read.findings] };
  },
};

/** Paths of what is called KML in an archive; none where it cannot be read. */
function textsIn(bytes: Uint8Array): readonly string[] {
  const directory = zipDirectory(bytes, mostEntries);
  if (typeof directory === "string") return [];
  return directory.records.map(({ path }) => path).filter((path) => /(^|\/)(?!\._)[^/]*\.kml$/i.test(path));
}

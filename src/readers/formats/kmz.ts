import { failure } from "../../core/outcome.ts";
import { brokenFile } from "../file-findings.ts";
import type { Reader } from "../reading.ts";
import { unzipped } from "../unzip.ts";
import { wholeBytes } from "../xml-file.ts";
import { xmlLetters } from "../xml-letters.ts";
import { kmlTexts } from "./kml/kml-texts.ts";
import { kmlReader } from "./kml.ts";

const title = "KMZ (KML 2.2, packed)";

/**
 * KMZ: every KML of the archive, whatever they are called, for the first may do no more than lead to the others; pictures are left where they are.
 * Findings: `readers/letters-differ`, and those of `unzip.ts` and `kml-texts.ts`.
 */
export const kmzReader: Reader = {
  title,
  endings: ["kmz"],
  most_bytes: 50e6,
  begins: (head) => head.startsWith("PK\u{3}\u{4}") && head.includes("doc.kml"),
  read: async (file, answers, followed) => {
    const { name } = file;
    const files = unzipped(await wholeBytes(file), name, (path) => /\.kml$/i.test(path), kmlReader.most_bytes);
    if (!files.ok) return files;
    if (files.value.length === 0) return failure([brokenFile(name, title, "there is no KML in it")]);
    const letters = files.value.map(({ path, bytes }) => ({ path, read: xmlLetters(bytes, name, title) }));
    const findings = letters.flatMap(({ read }) => read.findings).slice(0, 1);
    if (letters.some(({ read }) => !read.ok)) return failure(findings);
    const texts = letters.flatMap(({ path, read }) => (read.ok ? [{ path, text: read.value }] : []));
    const outcome = await kmlTexts(texts, { name, title }, answers, followed);
    return { ...outcome, findings: [...findings, ...outcome.findings] };
  },
};

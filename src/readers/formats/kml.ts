import type { Reader } from "../reading.ts";
import { wholeBytes } from "../xml-file.ts";
import { xmlLetters } from "../xml-letters.ts";
import { kmlTexts } from "./kml/kml-texts.ts";

const title = "KML 2.2";

/** KML 2.2 and what came before and after it. Findings: `readers/letters-differ`, and those of `kml-texts.ts`. */
export const kmlReader: Reader = {
  title,
  endings: ["kml"],
  most_bytes: 40e6,
  begins: (head) => /<(\w+:)?kml[\s>]/.test(head),
  read: async (file, answers, followed) => {
    const letters = xmlLetters(await wholeBytes(file), file.name, title);
    if (!letters.ok) return letters;
    const read = await kmlTexts(
      [{ path: file.name, text: letters.value }],
      { name: file.name, title },
      answers,
      followed,
    );
    return { ...read, findings: [...letters.findings, ...read.findings] };
  },
};

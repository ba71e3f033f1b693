import { failure } from "../../core/outcome.ts";
import { lonLatSystem } from "../../core/systems/coordinate-system.ts";
import { brokenFile } from "../file-findings.ts";
import { createFoundSoFar } from "../found-so-far.ts";
import type { Reader } from "../reading.ts";
import { wholeBytes, xmlFollowed } from "../xml-file.ts";
import { xmlLetters } from "../xml-letters.ts";
import { createGpxWalk, isGpxWhole } from "./gpx/gpx-walk.ts";

const title = "GPX 1.1";

/**
 * GPX 1.1 and 1.0: waypoints as points, routes and tracks as lines, a piece a segment; a boundary that was written as a closed track stays a line,
 * which a person may take as an outline. Heights are metres. Findings: `readers/broken-file`, `readers/letters-differ`, `readers/stopped`,
 * and those of `found-so-far.ts`.
 */
export const gpxReader: Reader = {
  title,
  endings: ["gpx"],
  most_bytes: 50e6,
  begins: (head) => /<gpx[\s>]/.test(head),
  read: async (file, _answers, followed) => {
    const { name } = file;
    const letters = xmlLetters(await wholeBytes(file), name, title);
    if (!letters.ok) return letters;
    const found = createFoundSoFar(name);
    const walk = createGpxWalk(found);
    const gone = await xmlFollowed(letters.value, { name, title }, followed, isGpxWhole, (step) => {
      walk.take(step);
      return !found.isTooMany();
    });
    if (!gone.ok) return gone;
    const { root, version } = walk.head();
    if (root !== "gpx") return failure([brokenFile(name, title, `its outermost element is ${root.slice(0, 40)}`)]);
    return found.file({ format: `GPX ${version}`, system: lonLatSystem.name }, found.features, [], letters.findings);
  },
};

import type { Finding } from "../../core/finding.ts";
import { failure, type Outcome, success } from "../../core/outcome.ts";
import { breathe } from "../breathe.ts";
import { curvesAsCorners, notDrawn, symbolsAsPoints, tooMuchDrawn, withoutNumbers } from "../drawn-findings.ts";
import { brokenFile, nothingFound } from "../file-findings.ts";
import { type FileUnit, fileUnits, isFileUnit } from "../file-units.ts";
import { stopped } from "../findings.ts";
import { placeNumbers } from "../place-numbers.ts";
import type { FoundFile, NamedBytes, Reader, ReadingAnswers, ReadingFollowed } from "../reading.ts";
import type { Drawing, DrawnThing } from "./dxf/drawn.ts";
import { type DrawingLetters, drawingLetters } from "./dxf/dxf-letters.ts";
import { foundDrawn, isCaption } from "./dxf/found-drawn.ts";
import { ownValue } from "./dxf/own-data.ts";
import { type DrawingRead, mostCorners, mostThings, readDrawing } from "./dxf/read-drawing.ts";
import { symbolsPlaced } from "./dxf/symbols-placed.ts";
import { placesIn } from "./dxf/thing-of.ts";

const title = "DXF";
const binaryMark = "AutoCAD Binary DXF";

/**
 * DXF as text, of any version. Read by a reader of our own: it goes through the groups without holding them, keeps hatched areas, extended data and
 * code pages, and never takes a name out of the file for the name of a member. Findings: `readers/broken-file`, `readers/nothing-found`,
 * `readers/letters-differ`, and those of `drawn-findings.ts`.
 */
export const dxfReader: Reader = {
  title,
  endings: ["dxf"],
  // The text, what is drawn and its places: up to some 400 MB stand in memory for a drawing of many small things.
  most_bytes: 40e6,
  begins: (head) => isDrawing(head) || head.startsWith(binaryMark),
  read: readDxf,
};

/** Comments (999) may stand before the first section. */
function isDrawing(head: string): boolean {
  return /^(?:\u{ef}\u{bb}\u{bf})?(?:\s*999\r?\n[^\n]*\n){0,20}\s*0\r?\n\s*SECTION\s*\r?\n/u.test(head);
}

async function readDxf(
  file: NamedBytes,
  answers: ReadingAnswers,
  followed: ReadingFollowed,
): Promise<Outcome<FoundFile>> {
  const { name } = file;
  const letters = await lettersOf(file);
  if (letters.text.startsWith(binaryMark)) {
    return failure([brokenFile(name, title, 'it is a binary one; have it saved as text, "ASCII"')]);
  }
  const drawing = await followedTo(readDrawing(letters.text), letters.text.length, followed);
  if (drawing === null) return failure([stopped(name)]);
  if (drawing === "too much") return failure([tooMuchDrawn(name, mostThings, mostCorners)]);
  if (typeof drawing === "string") return failure([brokenFile(name, title, drawing)]);
  const stated = statedBy(drawing);
  const unit_m = fileUnits[answers.unit ?? stated.unit ?? "m"].metres;
  const placed = symbolsPlaced(drawing, leastPart_m / unit_m, mostThings);
  if (placed === null) return failure([tooMuchDrawn(name, mostThings, mostCorners)]);
  const { things } = placed;
  const box = boxOf(things);
  if (box === null) return failure([nothingFound(name, title)]);
  const placing = placeNumbers({ name, ...stated, box }, answers);
  if (!placing.ok) return placing;
  const findings = [...letters.findings, ...placing.findings, ...toldOf(name, drawing, placed.points)];
  if (placing.value.kind === "open") {
    return success({ format: title, system: "", features: [], questions: placing.value.questions }, findings);
  }
  const { system, position } = placing.value;
  return success(
    { format: title, system, features: foundDrawn(things, isFlat(things), position), questions: [] },
    findings,
  );
}

/** The file's bytes are let go of with this. */
async function lettersOf(file: NamedBytes): Promise<DrawingLetters> {
  return drawingLetters(new Uint8Array(await file.slice(0, file.size).arrayBuffer()), file.name);
}

/** A symbol that is larger is part of the drawing. Common practice, no source: no tree or post is drawn 15 m wide, no parcel smaller. */
const leastPart_m = 15;

async function followedTo(
  work: Generator<number, DrawingRead>,
  length: number,
  { progress, signal }: ReadingFollowed,
): Promise<DrawingRead | null> {
  for (;;) {
    const step = work.next();
    if (step.done === true) return step.value;
    progress?.(step.value / length);
    await breathe();
    if (signal?.aborted === true) return null;
  }
}

/** System and unit: what our own drawings say, else `$INSUNITS`. */
function statedBy({ units, things }: Drawing): { readonly system: string | null; readonly unit: FileUnit | null } {
  const about = things.find(({ own }) => ownValue(own, "system") !== null)?.own ?? null;
  const [system, unit] = [ownValue(about, "system"), ownValue(about, "unit")];
  if (typeof system === "string" && typeof unit === "string" && isFileUnit(unit)) return { system, unit };
  return { system: null, unit: drawingUnits.get(units ?? 0) ?? null };
}

/** `$INSUNITS` (DXF reference). 1, inches, is what programs write where nobody chose, so it says nothing. */
const drawingUnits: ReadonlyMap<number, FileUnit> = new Map([
  [2, "ft"],
  [4, "mm"],
  [5, "cm"],
  [6, "m"],
  [7, "km"],
  [10, "yd"],
  [14, "dm"],
  [21, "us-ft"],
]);

/** Flat drawings have 0 as the height of everything, which is no height. Ours leave out what is not known. */
function isFlat(things: readonly DrawnThing[]): boolean {
  return things.every(({ shape, own }) => own !== null || placesIn(shape).every(([, , z]) => z === null || z === 0));
}

function boxOf(things: readonly DrawnThing[]) {
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const thing of things) {
    if (isCaption(thing)) continue;
    for (const [x, y] of placesIn(thing.shape)) {
      [west, south, east, north] = [Math.min(west, x), Math.min(south, y), Math.max(east, x), Math.max(north, y)];
    }
  }
  return east < west ? null : { least: [west, south] as const, most: [east, north] as const };
}

function toldOf(name: string, { others, curves, broken }: Drawing, symbols: number): readonly Finding[] {
  return [
    ...(broken.count > 0 ? [withoutNumbers(name, broken.count, broken.example)] : []),
    ...(others.size > 0 ? [notDrawn(name, [...others])] : []),
    ...(curves > 0 ? [curvesAsCorners(name, curves)] : []),
    ...(symbols > 0 ? [symbolsAsPoints(name, symbols)] : []),
  ];
}

import type { Finding } from "../../core/finding.ts";
import { failure, type Outcome, success } from "../../core/outcome.ts";
import { systemOfWkt } from "../../core/systems/system-of-wkt.ts";
import { breathe } from "../breathe.ts";
import { curvesAsCorners, notDrawn, tooMuchDrawn, withoutNumbers } from "../drawn-findings.ts";
import { brokenFile, nothingFound } from "../file-findings.ts";
import { type FileUnit, fileUnits } from "../file-units.ts";
import { stopped } from "../findings.ts";
import { placeNumbers } from "../place-numbers.ts";
import type { FoundFile, NamedBytes, Reader, ReadingAnswers, ReadingFollowed } from "../reading.ts";
import { xmlLetters } from "../xml-letters.ts";
import { type XmlElement, xmlSteps } from "../xml-steps.ts";
import { attributeOf, elementsOf } from "../xml-tree.ts";
import type { SurveyPlace } from "./landxml/survey.ts";
import { boxOf, geometryOf, withoutFlatHeights } from "./landxml/survey-geometry.ts";
import { type SurveyElement, type SurveyThings, surveyThings } from "./landxml/survey-things.ts";

const title = "LandXML 1.2";

/**
 * LandXML: points, parcels, plan features, alignments, and points and edges of surfaces, whichever version. Its numbers are northing, then easting. Findings:
 * `readers/broken-file`, `readers/nothing-found`, `readers/letters-differ`, those of `placeNumbers` and of `drawn-findings.ts`.
 */
export const landXmlReader: Reader = {
  title,
  endings: ["xml", "landxml"],
  // The text, its elements and what is drawn from them: up to some 400 MB stand in memory for a file of many points.
  most_bytes: 25e6,
  begins: (head) => /<LandXML[\s>]/.test(head),
  read: readLandXml,
};

/** Elements that are looked at as a whole; surfaces and lists of points are too long for that. */
const wholes: ReadonlySet<string> = new Set([
  "Units",
  "CoordinateSystem",
  "CgPoint",
  "Parcel",
  "PlanFeature",
  "Alignment",
  "P",
  "Breakline",
  "Boundary",
  "Feature",
]);
const mostThings = 200_000;
const mostCorners = 600_000;
const stepsAPiece = 5000;

interface Survey {
  readonly units: XmlElement | null;
  readonly system: XmlElement | null;
  readonly elements: readonly SurveyElement[];
  readonly features: ReadonlyMap<string, XmlElement>;
}

async function readLandXml(
  file: NamedBytes,
  answers: ReadingAnswers,
  followed: ReadingFollowed,
): Promise<Outcome<FoundFile>> {
  const { name } = file;
  const text = await lettersOf(file);
  if (!text.ok) return text;
  const survey = await surveyIn(text.value, name, followed);
  if (!survey.ok) return survey;
  const read = surveyThings(survey.value.elements, survey.value.features, mostCorners);
  if (read === null) return failure([tooMuchDrawn(name, mostThings, mostCorners)]);
  const told = toldOf(name, read);
  const things = withoutFlatHeights(read.things);
  const box = boxOf(things);
  if (box === null) return failure([...told, nothingFound(name, title)]);
  const units = survey.value.units;
  const unit = unitOf(units);
  const placing = placeNumbers({ name, system: systemOf(survey.value.system), unit, box }, answers);
  if (!placing.ok) return placing;
  const findings = [...text.findings, ...placing.findings, ...told];
  if (placing.value.kind === "open") {
    return success({ format: title, system: "", features: [], questions: placing.value.questions }, findings);
  }
  const { system, position } = placing.value;
  const raised = heightScale(units, unit);
  const place = ([x, y, z]: SurveyPlace) => position(x, y, z === null ? null : z * raised);
  const features = things.map((thing) => {
    const { name: called, layer, values } = thing;
    return { name: called, layer, values, geometry: geometryOf(thing, place) };
  });
  return success({ format: title, system, features, questions: [] }, findings);
}

/** The file's bytes are let go of with this. */
async function lettersOf(file: NamedBytes): Promise<Outcome<string>> {
  return xmlLetters(new Uint8Array(await file.slice(0, file.size).arrayBuffer()), file.name, title);
}

async function surveyIn(text: string, name: string, { progress, signal }: ReadingFollowed): Promise<Outcome<Survey>> {
  const elements: SurveyElement[] = [];
  const features = new Map<string, XmlElement>();
  const groups: (string | null)[] = [];
  let units: XmlElement | null = null;
  let system: XmlElement | null = null;
  let isSurvey = false;
  let steps = 0;
  for (const step of xmlSteps(text, (element) => wholes.has(element))) {
    if (++steps % stepsAPiece === 0) {
      progress?.(Math.min(0.99, (steps * 60) / text.length));
      await breathe();
      if (signal?.aborted === true) return failure([stopped(name)]);
    }
    if (step.kind === "broken") return failure([brokenFile(name, title, step.why)]);
    if (step.kind === "open") {
      isSurvey ||= step.name === "LandXML";
      groups.push(attributeOf(step, "name") ?? (groups.at(-1) || null));
    } else if (step.kind === "close") groups.pop();
    else {
      const { element } = step;
      const layer = groups.at(-1) ?? null;
      if (element.name === "Units") units ??= element.children[0] ?? null;
      else if (element.name === "CoordinateSystem") system ??= element;
      else if (element.name === "Feature") {
        const called = attributeOf(element, "name");
        if (called !== null) features.set(called, element);
      } else {
        elements.push({ element, layer });
        // Parcels may stand in parcels.
        for (const inner of elementsOf(element, "Parcel")) elements.push({ element: inner, layer });
      }
      if (elements.length > mostThings) return failure([tooMuchDrawn(name, mostThings, mostCorners)]);
    }
  }
  if (!isSurvey) return failure([brokenFile(name, title, "it is XML of another kind")]);
  return success({ units, system, elements, features });
}

const linearUnits: ReadonlyMap<string, FileUnit> = new Map([
  ["meter", "m"],
  ["millimeter", "mm"],
  ["centimeter", "cm"],
  ["kilometer", "km"],
  ["foot", "ft"],
  ["USSurveyFoot", "us-ft"],
  ["inch", "in"],
]);

function unitOf(units: XmlElement | null): FileUnit | null {
  return units === null ? null : (linearUnits.get(attributeOf(units, "linearUnit") ?? "") ?? null);
}

/** Heights may be counted in another unit than the rest (`elevationUnit`). */
function heightScale(units: XmlElement | null, unit: FileUnit | null): number {
  const stated = units === null ? null : attributeOf(units, "elevationUnit");
  if (stated === null || unit === null) return 1;
  if (stated === "meter") return 1 / fileUnits[unit].metres;
  const isFeet = stated === "feet" && unit !== "us-ft";
  return isFeet ? fileUnits.ft.metres / fileUnits[unit].metres : 1;
}

/** A code, else a definition in words of proj4 (as we write it), else well-known text; a code of 0 is none. */
function systemOf(element: XmlElement | null): string | null {
  if (element === null) return null;
  const code = attributeOf(element, "epsgCode")?.trim() ?? "";
  if (/^\d{4,5}$/.test(code)) return `EPSG:${code}`;
  const definition = attributeOf(element, "desc")?.trim() ?? "";
  if (definition.startsWith("+proj=")) return definition;
  const wkt = attributeOf(element, "ogcWktCode")?.trim() ?? "";
  if (!wkt.includes("[")) return null;
  const read = systemOfWkt(wkt);
  return read.ok ? (read.value.code === null ? read.value.definition : `EPSG:${read.value.code}`) : null;
}

function toldOf(name: string, { unread, curves, broken }: SurveyThings): readonly Finding[] {
  return [
    ...(broken.count > 0 ? [withoutNumbers(name, broken.count, broken.example)] : []),
    ...(unread.size > 0 ? [notDrawn(name, [...unread])] : []),
    ...(curves > 0 ? [curvesAsCorners(name, curves)] : []),
  ];
}

import { positionsOf } from "../../../core/exchange/bounds.ts";
import type { Finding } from "../../../core/finding.ts";
import { failure, type Outcome } from "../../../core/outcome.ts";
import { brokenFile } from "../../file-findings.ts";
import { createFoundSoFar } from "../../found-so-far.ts";
import { placeFound } from "../../place-found.ts";
import type { FoundFeature, FoundFile, ReadingAnswers, ReadingFollowed } from "../../reading.ts";
import { withPositions } from "../../with-positions.ts";
import { xmlFollowed } from "../../xml-file.ts";
import type { XmlElement } from "../../xml-steps.ts";
import { childText } from "../../xml-tree.ts";
import { linkedElsewhere, spacesInPlaces } from "./findings.ts";
import { kmlShape } from "./kml-geometry.ts";
import { addSchema, type KmlTypes, kmlValues } from "./kml-values.ts";

const folders = ["Document", "Folder"];

/** Everything but documents and folders comes whole. */
function isWhole(name: string, parents: readonly string[]): boolean {
  return !(
    name === "kml" ||
    (folders.includes(name) && parents.every((each) => each === "kml" || folders.includes(each)))
  );
}

/**
 * What a KML text holds. `name` is that of the file, `title` its format. Findings: `readers/spaces-in-places`, `readers/linked-elsewhere`, and those of
 * `xml-file.ts`, `found-so-far.ts` and `place-found.ts`.
 */
export async function kmlText(
  text: string,
  { name, title }: { readonly name: string; readonly title: string },
  answers: ReadingAnswers,
  followed: ReadingFollowed,
): Promise<Outcome<FoundFile>> {
  const found = createFoundSoFar(name);
  const types: KmlTypes = new Map();
  const around: (string | null)[] = [];
  const seen = { root: "", links: 0, spaced: 0 };
  const placemark = (element: XmlElement): void => {
    const called = childText(element, "name");
    const { geometry, lost, isSpaced } = kmlShape(element);
    if (isSpaced) seen.spaced++;
    if (geometry === null || lost > 0) found.leaveOut(called ?? "a placemark without a name");
    if (geometry === null) return;
    const layer = around.filter((each) => each !== null).join(" / ");
    found.add({ name: called, layer: layer === "" ? null : layer, geometry, values: kmlValues(element, types) });
  };
  const gone = await xmlFollowed(text, { name, title }, followed, isWhole, (step) => {
    if (step.kind === "open") {
      if (seen.root === "") seen.root = step.name;
      if (step.name === "Folder") around.push(null);
    } else if (step.kind === "close") {
      if (step.name === "Folder") around.pop();
    } else {
      const { element } = step;
      if (seen.root === "") seen.root = element.name;
      if (element.name === "Placemark") placemark(element);
      else if (element.name === "Schema") addSchema(types, element);
      else if (element.name === "NetworkLink") seen.links++;
      else if (element.name === "name" && around.length > 0) around[around.length - 1] = element.text.trim() || null;
    }
    return !found.isTooMany();
  });
  if (!gone.ok) return gone;
  if (seen.root !== "kml")
    return failure([brokenFile(name, title, `its outermost element is ${seen.root.slice(0, 40)}`)]);
  const findings: readonly Finding[] = [
    ...(seen.links === 0 ? [] : [linkedElsewhere(name, seen.links)]),
    ...(seen.spaced === 0 ? [] : [spacesInPlaces(name, seen.spaced)]),
  ];
  const placed = placeFound(found, { name, stated: null, mayBeProjected: false }, { ...answers, system: null });
  if (!placed.ok) return placed;
  const { system, features, questions } = placed.value;
  return found.file({ format: title, system }, withKnownHeights(features), questions, [
    ...findings,
    ...placed.findings,
  ]);
}

/** Where every height is 0, none is known: programs that draw on the ground write it so. */
function withKnownHeights(features: readonly FoundFeature[]): readonly FoundFeature[] {
  const isKnown = features.some(({ geometry }) => positionsOf(geometry).some(([, , height = 0]) => height !== 0));
  if (isKnown) return features;
  return features.map((feature) => ({
    ...feature,
    geometry: withPositions(feature.geometry, ([lon = 0, lat = 0]) => [lon, lat]),
  }));
}

import { positionsOf } from "../../../core/exchange/bounds.ts";
import { failure, type Outcome } from "../../../core/outcome.ts";
import { brokenFile } from "../../file-findings.ts";
import { createFoundSoFar } from "../../found-so-far.ts";
import { placeFound } from "../../place-found.ts";
import type { FoundFeature, FoundFile, ReadingAnswers, ReadingFollowed } from "../../reading.ts";
import { withPositions } from "../../with-positions.ts";
import { xmlFollowed } from "../../xml-file.ts";
import { linkedElsewhere, spacesInPlaces } from "./findings.ts";
import { createKmlWalk, isKmlWhole } from "./kml-walk.ts";

/**
 * What KML texts hold that belong together. `name` is that of the file, `title` its format. Findings: `readers/spaces-in-places`,
 * `readers/linked-elsewhere`, and those of `xml-file.ts`, `found-so-far.ts` and `place-found.ts`.
 */
export async function kmlTexts(
  texts: readonly { readonly path: string; readonly text: string }[],
  { name, title }: { readonly name: string; readonly title: string },
  answers: ReadingAnswers,
  followed: ReadingFollowed,
): Promise<Outcome<FoundFile>> {
  const found = createFoundSoFar(name);
  const links: string[] = [];
  let spaced = 0;
  for (const { text } of texts) {
    const walk = createKmlWalk(found, texts.length === 1);
    const gone = await xmlFollowed(text, { name, title }, followed, isKmlWhole, (step) => {
      walk.take(step);
      return !found.isTooMany();
    });
    if (!gone.ok) return gone;
    const seen = walk.seen();
    if (seen.root !== "kml") {
      return failure([brokenFile(name, title, `its outermost element is ${seen.root.slice(0, 40)}`)]);
    }
    links.push(...seen.links);
    spaced += seen.spaced;
  }
  const elsewhere = links.filter((link) => !texts.some(({ path }) => path === link.replace(/^\.\//, "")));
  const placed = placeFound(found, { name, stated: null, mayBeProjected: false }, { ...answers, system: null });
  if (!placed.ok) return placed;
  const { system, features, questions } = placed.value;
  return found.file({ format: title, system }, withKnownHeights(features), questions, [
    ...(elsewhere.length === 0 ? [] : [linkedElsewhere(name, elsewhere.length)]),
    ...(spaced === 0 ? [] : [spacesInPlaces(name, spaced)]),
    ...placed.findings,
  ]);
}

/** Where every height is 0, none is known: programs that draw on the ground write it so. */
function withKnownHeights(features: readonly FoundFeature[]): readonly FoundFeature[] {
  const heights = (isOne: (height: number) => boolean) =>
    features.some(({ geometry }) =>
      positionsOf(geometry).some(([, , height]) => height !== undefined && isOne(height)),
    );
  if (!heights((height) => height === 0) || heights((height) => height !== 0)) return features;
  return features.map((feature) => ({
    ...feature,
    geometry: withPositions(feature.geometry, ([lon = 0, lat = 0]) => [lon, lat]),
  }));
}

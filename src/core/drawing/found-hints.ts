import { type Role, roles } from "../project/project.ts";
import { hasHeights } from "./found-heights.ts";
import { type FoundThing, saidValue } from "./found-thing.ts";
import { type DrawnKind, shapesOf } from "./shape.ts";

/** What a plan hands over and works out anew by itself: it comes back only when it is chosen. */
const workedOut = ["vine", "stake", "post", "anchor", "peg", "fitting", "pipe"];

/** Words of layers and names, the surer first, and what they are called for; English, common practice, no source. */
const hints: readonly (readonly [words: readonly string[], role: Role])[] = [
  [["main line", "mainline", "trench", "route"], "main-line"],
  [["cross alley", "alley", "alleyway"], "cross-alley"],
  [["well", "source", "pump", "hydrant", "tap", "spring"], "source"],
  [["mark", "benchmark", "control", "pin", "monument", "bm", "cp", "gcp"], "mark"],
  [["spot height", "spot", "elevation", "height", "contour", "station"], "elevation"],
  [["row"], "row"],
  [
    [
      "obstacle",
      "tree",
      "oak",
      "rock",
      "boulder",
      "stump",
      "shed",
      "barn",
      "building",
      "house",
      "pole",
      "tank",
      "pond",
    ],
    "obstacle",
  ],
  [
    ["no plant", "stream", "creek", "ditch", "canal", "road", "path", "fence", "power line", "easement", "septic"],
    "no-plant",
  ],
  [["block", "planting"], "block"],
  [["parcel", "property", "lot", "boundary", "outline", "perimeter", "field", "partfield", "land", "site"], "parcel"],
];

/** What words say of a thing: a role, that it is worked out anew, or nothing. */
export type Hint = Role | "worked-out" | null;

/** The role that a thing states itself, as plans that are handed over do; "worked-out" for vines, posts and the like. */
export function ownHint(thing: FoundThing): Hint {
  const stated = saidValue(thing, "role") ?? saidValue(thing, "kind") ?? saidValue(thing, "type");
  if (typeof stated !== "string") return null;
  const said = stated.trim().toLowerCase();
  const role = roles.find((each) => each === said);
  if (role !== undefined) return role;
  if (said === "trench-station") return hasHeights(thing) ? "elevation" : "worked-out";
  return /^(?:(?:end|line)-post|post|vine|stake|anchor|offset-peg|pipe|row-tee|branch-(?:tee|start|end)|bend|crossing|(?:low|high)-point|pipe-start|set-valve)$/.test(
    said,
  )
    ? "worked-out"
    : null;
}

/** Values that say in a word what a thing is: codes of surveys, types of waypoints, classes of a map. */
const telling = ["code", "type", "kind", "category", "class"];

/** What a thing says of itself, by its own role, its layer, its name, or a value such as its code; kinds are those it can be drawn as. */
export function hintOf(thing: FoundThing, kinds: readonly DrawnKind[]): Hint {
  const values = telling.map((name) => saidValue(thing, name));
  const texts = [thing.layer, thing.name, ...values].map((each) => (typeof each === "string" ? each : null));
  return texts.reduce<Hint>((hint, text) => hint ?? wordHint(text, kinds), ownHint(thing));
}

/** Where each word or pair of words stands among the hints; -1 for what is worked out. */
const placeOfWord: ReadonlyMap<string, number> = new Map([
  ...hints.flatMap(([words], place) => words.map((word) => [word, place] as const)),
  ...workedOut.map((word) => [word, -1] as const),
]);

/** What the words of a text say of a thing of these kinds: the first hint whose role can be drawn so. */
function wordHint(text: string | null, kinds: readonly DrawnKind[]): Hint {
  if (text === null) return null;
  // More than this is no name.
  const words = text
    .slice(0, 200)
    .toLowerCase()
    .split(/[^\p{L}]+/u)
    .map((word) => (word.length > 3 && /[^s]s$/.test(word) ? word.slice(0, -1) : word));
  const pairs = words.slice(1).map((word, i) => `${words[i]} ${word}`);
  const found = [...pairs, ...words].flatMap((word) => placeOfWord.get(word) ?? []);
  if (found.includes(-1) && kinds.some((kind) => kind !== "area")) return "worked-out";
  const fitting = found.filter((place) => {
    const role = hints[place]?.[1];
    return role !== undefined && shapesOf[role].some((kind) => kinds.includes(kind));
  });
  return fitting.length === 0 ? null : (hints[Math.min(...fitting)]?.[1] ?? null);
}

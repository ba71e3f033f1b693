import type { Layer, Named } from "./layers/layer.ts";
import { cutBack, cutFront, nameBy, piecesOf } from "./name-pattern.ts";
import { codeLetters, type Letters, plainLetters } from "./plain-letters.ts";

/** A name that could not stay as the pattern made it: too long, not unique, or with letters that the format does not keep. */
export interface ChangedName {
  readonly id: string;
  readonly wished: string;
  readonly name: string;
}

/** What every feature is called in a file; unique within the file. */
export interface Names {
  of(feature: Named): string;
  readonly changed: readonly ChangedName[];
}

/** How things are to be called. */
export interface Naming {
  readonly pattern: string;
  readonly longest: number | null;
  readonly letters: Letters;
}

/**
 * Names by a pattern: {id} the stable id, {kind} the word and {code} the letter of its kind (rows have none), {block}, {row}, {number}; {number:3} with
 * leading zeros, {block:2} the first two letters. What something has no value for is left out. Names of its own (marks, parcels) are kept.
 * Then cut to `longest` letters, and made unique over all layers, with what was changed. Where names are cut or plain, capitals do not
 * tell them apart: receivers write them alike.
 */
export function namesOf(layers: readonly Layer[], naming: Naming): Names {
  const work = namingOf(layers, naming);
  for (;;) {
    const step = work.next();
    if (step.done === true) return step.value;
  }
}

/** Things that are named before a page may do something in between. */
const namedAStep = 2000;

/** The same as `namesOf`, step by step. */
export function* namingOf(layers: readonly Layer[], naming: Naming): Generator<undefined, Names> {
  const { pieces } = piecesOf(naming.pattern);
  const plan = { ...naming, pieces };
  const claims = createClaims(naming);
  const changed: ChangedName[] = [];
  const renamed = new Map<string, string>();
  let steps = 0;
  // What has a name of its own is named first: it keeps it where a pattern would make the same.
  for (const own of [true, false]) {
    for (const layer of layers) {
      if (hasOwnNames(layer) !== own || isPlainlyUnique(layer, naming, claims)) continue;
      for (const thing of layer.named()) {
        const wished = wishedName(plan, thing);
        const fitted = fittedName(plan, thing, wished);
        const name = claims.claim(fitted, thing.parts.own === null ? cutFront : cutBack);
        if (name !== fitted) renamed.set(thing.id, name);
        if (name !== wished) changed.push({ id: thing.id, wished, name });
        steps++;
        if (steps % namedAStep === 0) yield undefined;
      }
    }
  }
  return { of: (thing) => renamed.get(thing.id) ?? fittedName(plan, thing, wishedName(plan, thing)), changed };
}

type Plan = Naming & { readonly pieces: ReturnType<typeof piecesOf>["pieces"] };

function wishedName({ pieces }: Plan, thing: Named): string {
  return thing.parts.own ?? nameBy(pieces, thing, null);
}

/** A name that comes out empty is the id. */
function fittedName({ pieces, longest, letters }: Plan, thing: Named, wished: string): string {
  const lettered = lettersOf(wished, letters);
  if (lettered !== "" && (longest === null || lettered.length <= longest)) return lettered;
  const byId = lettersOf(thing.id, letters);
  if (longest === null) return byId;
  const short =
    thing.parts.own === null
      ? cutFront(lettersOf(nameBy(pieces, thing, longest), letters), longest)
      : cutBack(lettered, longest);
  return short === "" ? cutFront(byId, longest) : short;
}

/** Control characters and halves of letters belong in no name. */
function lettersOf(name: string, letters: Naming["letters"]): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
  const clean = name.replace(/[\u0000-\u001f\u007f-\u009f\u2028\u2029]+/g, " ").replace(/\p{Surrogate}/gu, "\ufffd");
  switch (letters) {
    case "any":
      return clean;
    case "ascii":
      return plainLetters(clean);
    case "code":
      return codeLetters(clean);
    default:
      return letters satisfies never;
  }
}

function hasOwnNames(layer: Layer): boolean {
  for (const { parts } of layer.named()) return parts.own !== null;
  return false;
}

/** Layers up to this are looked through whole, whatever their names. */
const smallLayer = 20_000;

/**
 * A large layer whose things are called by their ids, which are unique, needs no looking through; unless something has a name of its own
 * that begins like them.
 */
function isPlainlyUnique(layer: Layer, { pattern, longest, letters }: Naming, claims: Claims): boolean {
  if (pattern !== "{id}" || longest !== null || letters !== "any" || layer.count <= smallLayer) return false;
  for (const { id, parts } of layer.named()) return parts.own === null && !claims.someBegin(`${id.split("-")[0]}-`);
  return true;
}

interface Claims {
  /** The name itself when it is still free, else with a number behind it, cut so that it fits. */
  claim(name: string, cut: (name: string, longest: number) => string): string;
  someBegin(beginning: string): boolean;
}

function createClaims({ longest, letters }: Naming): Claims {
  const taken = new Set<string>();
  const nextNumber = new Map<string, number>();
  const isFolded = longest !== null || letters !== "any";
  const key = (name: string) => (isFolded ? name.toLowerCase() : name);
  return {
    claim: (name, cut) => {
      const own = key(name);
      if (!taken.has(own)) {
        taken.add(own);
        return name;
      }
      for (let number = nextNumber.get(own) ?? 2; ; number++) {
        const behind = `-${number}`;
        const room = longest === null ? name.length : longest - behind.length;
        // Where not even the number has room, being told apart counts for more than the length.
        const free = room < 1 ? String(number) : `${cut(name, room)}${behind}`;
        if (taken.has(key(free))) continue;
        taken.add(key(free));
        nextNumber.set(own, number + 1);
        return free;
      }
    },
    someBegin: (beginning) => [...taken].some((name) => name.startsWith(beginning)),
  };
}

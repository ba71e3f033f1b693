/** An element of an XML text. Prefixes are left out of its name ("gx:Track" is "Track"), not out of its attributes' names. */
export interface XmlElement {
  readonly name: string;
  readonly attributes: readonly (readonly [name: string, value: string])[];
  readonly children: readonly XmlElement[];
  /** The text that stands directly in it, put together. */
  readonly text: string;
}

/** What is met going through an XML text. */
export type XmlStep =
  | { readonly kind: "open"; readonly name: string; readonly attributes: XmlElement["attributes"] }
  | { readonly kind: "whole"; readonly element: XmlElement }
  | { readonly kind: "close"; readonly name: string }
  /** The last step: half a sentence that says why the text is no XML, or none that is read. */
  | { readonly kind: "broken"; readonly why: string };

/** No format of the trade nests deeper than some twenty elements; what walks through them may call itself for each. */
export const mostNested = 200;
/** Elements in one that is asked for as a whole: some 200 MB as a tree. */
const mostElements = 1_000_000;
/** Far more than any format gives an element. */
const mostAttributes = 500;
/** Names of elements and attributes, letters. */
const longestName = 500;

interface Growing {
  readonly name: string;
  readonly attributes: XmlElement["attributes"];
  readonly children: XmlElement[];
  text: string;
}

const tagName = /[^\s/>=<"'!?&]+/y;
const attributeStart = /\s+([^\s/>=<"'!?&]+)\s*=\s*(["'])/y;
const tagEnd = /\s*(\/?)>/y;

/**
 * Goes through an XML text from its beginning to its end, so that a long file need not be held as a tree: `isWhole` says of an element, by its
 * name and those around it, whether it comes as a whole; others come as they open and close. `place` follows how far it has come. Nothing is looked up outside the text, and
 * a text that defines entities of its own is not read at all: entities that stand for each other would fill any memory.
 * Source: W3C Extensible Markup Language (XML) 1.0, without its document types.
 */
export function* xmlSteps(
  text: string,
  isWhole: (name: string, parents: readonly string[]) => boolean,
  place: { at: number } = { at: 0 },
): Generator<XmlStep> {
  const parents: string[] = [];
  const growing: Growing[] = [];
  let hasRoot = false;
  let elements = 0;
  let at = text.startsWith("\u{feff}") ? 1 : 0;
  const broken = (why: string): XmlStep => ({ kind: "broken", why });
  while (at < text.length) {
    place.at = at;
    const next = text.indexOf("<", at);
    const end = next < 0 ? text.length : next;
    if (end > at) {
      const inner = growing.at(-1);
      if (parents.length === 0 && text.slice(at, end).trim() !== "") {
        return yield broken("something stands outside its outermost element");
      }
      if (inner !== undefined) {
        const told = plainText(text.slice(at, end));
        if (told === null) return yield broken("it uses a name for text (an entity) that XML does not know");
        inner.text += told;
      }
      at = end;
      continue;
    }
    if (text.startsWith("<!--", at)) {
      const close = text.indexOf("-->", at + 4);
      if (close < 0) return yield broken("a comment does not end, the file may be cut off");
      at = close + 3;
    } else if (text.startsWith("<![CDATA[", at)) {
      const close = text.indexOf("]]>", at + 9);
      if (close < 0) return yield broken("a text does not end, the file may be cut off");
      const inner = growing.at(-1);
      if (inner !== undefined) inner.text += text.slice(at + 9, close);
      at = close + 3;
    } else if (text.startsWith("<?", at)) {
      const close = text.indexOf("?>", at + 2);
      if (close < 0) return yield broken("an instruction does not end, the file may be cut off");
      at = close + 2;
    } else if (text.startsWith("<!", at)) {
      const close = text.indexOf(">", at);
      if (close < 0 || hasRoot) return yield broken("it has a declaration where none may stand");
      if (text.slice(at, close).includes("[")) {
        return yield broken(
          "it defines names for text (entities) of its own, which is refused: such files can fill any memory",
        );
      }
      at = close + 1;
    } else if (text.startsWith("</", at)) {
      const close = text.indexOf(">", at);
      const opened = parents.pop();
      if (close < 0) return yield broken("a tag does not end, the file may be cut off");
      if (opened === undefined || close - at > longestName) return yield broken("an end tag has no beginning");
      const name = text.slice(at + 2, close).trimEnd();
      if (name !== opened) return yield broken(`its element ${opened} ends as ${name.slice(0, 40)}`);
      at = close + 1;
      const done = growing.pop();
      const around = growing.at(-1);
      if (done === undefined) yield { kind: "close", name: localName(name) };
      else if (around === undefined) yield { kind: "whole", element: done };
      else around.children.push(done);
    } else {
      if (parents.length === 0 && hasRoot) return yield broken("it has more than one outermost element");
      const tag = tagAt(text, at);
      if (typeof tag === "string") return yield broken(tag);
      const { name, attributes, isEmpty } = tag;
      hasRoot = true;
      at = tag.end;
      const local = localName(name);
      const around = growing.at(-1);
      const element: Growing = { name: local, attributes, children: [], text: "" };
      elements = around === undefined ? 0 : elements + 1;
      if (elements > mostElements) return yield broken(`something in it has more than ${mostElements} parts`);
      const isInside = around !== undefined || isWhole(local, parents.map(localName));
      if (isEmpty) {
        if (around !== undefined) around.children.push(element);
        else if (isInside) yield { kind: "whole", element };
        else {
          yield { kind: "open", name: local, attributes };
          yield { kind: "close", name: local };
        }
      } else {
        if (parents.length >= mostNested) {
          return yield broken(`its elements stand more than ${mostNested} deep inside each other`);
        }
        parents.push(name);
        if (isInside) growing.push(element);
        else yield { kind: "open", name: local, attributes };
      }
    }
  }
  const open = parents.at(-1);
  if (open !== undefined) return yield broken(`its element ${open} does not end, the file may be cut off`);
  if (!hasRoot) yield broken("there is nothing in it");
}

interface Tag {
  readonly name: string;
  readonly attributes: XmlElement["attributes"];
  readonly isEmpty: boolean;
  readonly end: number;
}

/** The tag that opens at a place, or why there is none. */
function tagAt(text: string, at: number): Tag | string {
  const name = matchAt(tagName, text, at + 1)?.[0];
  if (name === undefined || name.length > longestName) return "a tag has no name";
  const attributes: (readonly [string, string])[] = [];
  const names = new Set<string>();
  let end = at + 1 + name.length;
  for (;;) {
    const start = matchAt(attributeStart, text, end);
    if (start === null) break;
    const [all, attribute = "", quote = '"'] = start;
    const from = end + all.length;
    const to = text.indexOf(quote, from);
    if (to < 0) return "a tag does not end, the file may be cut off";
    const value = plainText(text.slice(from, to));
    if (value === null) return "it uses a name for text (an entity) that XML does not know";
    if (names.has(attribute)) return `an element has its attribute ${attribute.slice(0, 40)} twice`;
    if (names.size >= mostAttributes) return `an element has more than ${mostAttributes} attributes`;
    names.add(attribute);
    attributes.push([attribute, value]);
    end = to + 1;
  }
  const close = matchAt(tagEnd, text, end);
  if (close === null) return `the tag ${name.slice(0, 40)} is not written as XML asks, or the file is cut off`;
  return { name, attributes, isEmpty: close[1] === "/", end: end + close[0].length };
}

function matchAt(pattern: RegExp, text: string, at: number): RegExpExecArray | null {
  pattern.lastIndex = at;
  return pattern.exec(text);
}

function localName(name: string): string {
  return name.slice(name.indexOf(":") + 1);
}

const named: ReadonlyMap<string, string> = new Map([
  ["amp", "&"],
  ["lt", "<"],
  ["gt", ">"],
  ["quot", '"'],
  ["apos", "'"],
]);

const unknownName = /&(?!(?:amp|lt|gt|quot|apos|#\d{1,7}|#x[\da-fA-F]{1,6});)/;

/** Letters that are looked at together: each entity in them is a piece of text of its own for a moment. */
const together = 65_536;

/** Text with its five named characters and its numbered ones put in; null with any other name. */
export function plainText(text: string): string | null {
  if (!text.includes("&")) return text;
  if (unknownName.test(text)) return null;
  let told = "";
  for (let from = 0; from < text.length; ) {
    const next = text.indexOf("&", from + together);
    const to = next < 0 ? text.length : next;
    const part = charactersIn(text.slice(from, to));
    if (part === null) return null;
    told += part;
    from = to;
  }
  return told;
}

function charactersIn(text: string): string | null {
  let isKnown = true;
  const told = text.replace(/&([^;]+);/g, (_, name: string) => {
    const mark = character(name);
    if (mark === undefined) isKnown = false;
    return mark ?? "";
  });
  return isKnown ? told : null;
}

function character(name: string): string | undefined {
  if (!name.startsWith("#")) return named.get(name);
  const code = name.startsWith("#x") ? Number.parseInt(name.slice(2), 16) : Number(name.slice(1));
  return code > 0 && code <= 0x10ffff ? String.fromCodePoint(code) : undefined;
}

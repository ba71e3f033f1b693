/** No geometry and no list among properties stands deeper. */
const deepest = 60;
/** Lists and objects: four for each of the things that are taken at most, or one for each place of their lines. */
const mostLists = 2_000_000;
/** Texts that are no names of properties. */
const mostTexts = 3_000_000;
/** Properties of one thing. */
const mostMembers = 5000;

/**
 * Half a sentence that says why a JSON text would not fit into memory once it is read, or null: brackets in brackets without end, endless lists,
 * objects with endless members. Nothing else is looked at: whether it is JSON is for its parser to say.
 */
export function whyNoJson(text: string): string | null {
  const members = new Int32Array(deepest + 2);
  let depth = 0;
  let lists = 0;
  // Names of properties are counted off by their colons.
  let texts = 0;
  for (let i = 0; i < text.length; i++) {
    switch (text.charCodeAt(i)) {
      case quote:
        i = endOfText(text, i);
        texts++;
        if (texts > mostTexts) return `it has more than ${mostTexts} texts`;
        break;
      case openBracket:
      case openBrace:
        depth++;
        lists++;
        if (depth > deepest) return `its brackets stand more than ${deepest} deep in each other`;
        if (lists > mostLists) return `it has more than ${mostLists} lists and objects`;
        members[depth] = 0;
        break;
      case closeBracket:
      case closeBrace:
        depth = Math.max(0, depth - 1);
        break;
      case colon:
        texts--;
        members[depth] = (members[depth] ?? 0) + 1;
        if ((members[depth] ?? 0) > mostMembers) return `something in it has more than ${mostMembers} properties`;
        break;
    }
  }
  return null;
}

const quote = 0x22;
const backslash = 0x5c;
const openBracket = 0x5b;
const openBrace = 0x7b;
const closeBracket = 0x5d;
const closeBrace = 0x7d;
const colon = 0x3a;

/** Where the text in quotes ends that begins at a place; the end of all where it does not. */
function endOfText(text: string, from: number): number {
  for (let end = text.indexOf('"', from + 1); end >= 0; end = text.indexOf('"', end + 1)) {
    let before = end - 1;
    while (before > from && text.charCodeAt(before) === backslash) before--;
    if ((end - 1 - before) % 2 === 0) return end;
  }
  return text.length;
}

import { describe, expect, test } from "vitest";
import { mostNested, xmlSteps } from "../../src/readers/xml-steps.ts";
import { attributeOf, childrenOf, childText, elementsOf, xmlTree } from "../../src/readers/xml-tree.ts";

function tree(text: string) {
  const outcome = xmlTree(text, "a.xml", "XML");
  if (!outcome.ok) throw new Error(outcome.findings.map(({ message }) => message.join("")).join());
  return outcome.value;
}

function whyBroken(text: string): string {
  const outcome = xmlTree(text, "a.xml", "XML");
  expect(outcome.ok).toBe(false);
  expect(outcome.findings.map(({ code }) => code)).toEqual(["readers/broken-file"]);
  return outcome.findings.map(({ message }) => message.join("")).join("");
}

test("elements, attributes, texts, comments and CDATA of a text", () => {
  const root = tree(`\u{feff}<?xml version="1.0"?>
    <!-- <no/> --><kml xmlns='a'><gx:Track id="a&quot;b" other='1 > 0'>one &amp; t&#119;&#x6f;<![CDATA[ <b> & ]]><!-- no --> end</gx:Track><name/></kml> `);
  const [track] = childrenOf(root, "Track");
  expect(track?.text).toBe("one & two <b> &  end");
  expect(track && attributeOf(track, "id")).toBe('a"b');
  expect(track && attributeOf(track, "other")).toBe("1 > 0");
  expect(childText(root, "name")).toBeNull();
  expect([...elementsOf(root, "Track")]).toHaveLength(1);
});

test("a long text with many named characters comes out whole", () => {
  expect(tree(`<a>${"&lt;b&#x26;".repeat(50_000)}</a>`).text).toBe("<b&".repeat(50_000));
});

test("names that mean something to the language are names like others", () => {
  const root = tree(`<a __proto__="x" constructor="y"><__proto__>z</__proto__></a>`);
  expect(attributeOf(root, "__proto__")).toBe("x");
  expect(attributeOf(root, "toString")).toBeNull();
  expect(childText(root, "__proto__")).toBe("z");
});

test("what is not asked for as a whole comes as it opens and closes", () => {
  const steps = [...xmlSteps("<a><b><c>1</c></b><d/></a>", (name) => name === "c")];
  expect(
    steps.map((step) =>
      step.kind === "whole" ? step.element.text : step.kind === "broken" ? "" : `${step.kind} ${step.name}`,
    ),
  ).toEqual(["open a", "open b", "1", "close b", "open d", "close d", "close a"]);
});

test("a declaration of a document type without entities is passed over; nothing is fetched", () => {
  expect(tree('<!DOCTYPE gpx SYSTEM "http://example.org/gpx.dtd"><gpx/>').name).toBe("gpx");
});

describe("refused in words", () => {
  const bomb = `<!DOCTYPE a [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;&a;&a;">]><a>&b;</a>`;
  const cases: readonly (readonly [told: string, text: string, why: string])[] = [
    ["entities that stand for each other", bomb, "entities"],
    ["an entity from outside", `<!DOCTYPE a [<!ENTITY x SYSTEM "file:///etc/passwd">]><a>&x;</a>`, "entities"],
    ["an entity that nobody defined", "<a>&nbsp;</a>", "entity"],
    ["a bare ampersand", "<a>Söhne & Töchter</a>", "entity"],
    ["a bare ampersand in an attribute", `<a b="&"/>`, "entity"],
    ["an element that does not end", "<a><b>", "cut off"],
    ["a tag that does not end", "<a><b c=", "cut off"],
    ["an attribute that does not end", `<a b="c`, "cut off"],
    ["a comment that does not end", "<a><!-- ", "cut off"],
    ["a CDATA that does not end", "<a><![CDATA[", "cut off"],
    ["an instruction that does not end", "<a/><?x", "cut off"],
    ["elements that end crosswise", "<a><b></a></b>", "ends as"],
    ["an end without a beginning", "<a/></b>", "no beginning"],
    ["two outermost elements", "<a/><b/>", "more than one"],
    ["text before everything", "text <a/>", "outside"],
    ["a text that is none", "38.2921,-122.7165", "outside"],
    ["nothing", " ", "nothing in it"],
    ["the same attribute twice", `<a b="1" b="2"/>`, "twice"],
    ["attributes without end", `<a ${Array.from({ length: 600 }, (_, i) => `b${i}=""`).join(" ")}/>`, "more than 500"],
    ["elements too deep in each other", "<a>".repeat(mostNested + 1), "deep"],
    ["a declaration inside", "<a><!ELEMENT b></a>", "declaration"],
    ["parts without end", `<a>${"<b/>".repeat(1_000_001)}</a>`, "parts"],
    ["zeros", "\0".repeat(100), "outside"],
  ];
  for (const [told, text, why] of cases) {
    test(told, () => {
      expect(whyBroken(text)).toContain(why);
    });
  }

  test("a text that is cut off at any letter", () => {
    const text = `<?xml version="1.0"?><a b="c"><!-- d --><e>f &amp; g</e><![CDATA[h]]><i/></a>`;
    for (let length = 0; length < text.length; length++) {
      expect(xmlTree(text.slice(0, length), "a.xml", "XML").ok, `cut after ${length}`).toBe(false);
    }
  });
});

describe("texts made to take long are done with in a moment", () => {
  const most_ms = 3000;
  const length = 5_000_000;
  const cases: readonly (readonly [told: string, text: string])[] = [
    ["one endless name", `<${"a".repeat(length)}/>`],
    ["one endless attribute", `<a b="${"c".repeat(length)}"/>`],
    ["endless space in a tag", `<a ${" ".repeat(length)}/>`],
    ["endless space that ends in nothing", `<a ${" ".repeat(length)}`],
    ["endless text", `<a>${"b ".repeat(length / 2)}</a>`],
    ["endless named characters", `<a>${"&amp;".repeat(length / 5)}</a>`],
    ["endless ampersands", `<a>${"&".repeat(length)}</a>`],
    ["elements in elements", "<a>".repeat(length / 3)],
    ["openings", "<".repeat(length)],
    ["an end tag without end", `<a></${"a".repeat(length)}`],
  ];
  for (const [told, text] of cases) {
    test(told, () => {
      const begun = performance.now();
      const outcome = xmlTree(text, "a.xml", "XML");
      expect(performance.now() - begun).toBeLessThan(most_ms);
      if (!outcome.ok) expect(outcome.findings[0]?.message.join("").length).toBeLessThan(1000);
    });
  }
});

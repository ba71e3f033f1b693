import { readFileSync } from "node:fs";
import { describe, expect, it, test } from "vitest";
import { hasError } from "../../../src/core/finding.ts";
import { mostProject_bytes } from "../../../src/core/project/json-text.ts";
import { isJsonObject } from "../../../src/core/project/json-value.ts";
import { parseProject } from "../../../src/core/project/parse.ts";
import type { Json } from "../../../src/core/project/project.ts";
import { serializeProject } from "../../../src/core/project/serialize.ts";
import { text } from "../../../src/core/units.ts";
import expectedBad from "../../fixtures/bad/expected.json" with { type: "json" };
import expectedGood from "../../fixtures/good/expected.json" with { type: "json" };
import { codes, fixtureNames, fixtureText, projectIn } from "../../support/project-files.ts";

interface Expected {
  readonly code: string;
  readonly severity: string;
  readonly feature: string | null;
  readonly at?: readonly number[];
}

const bad = new Map<string, Expected>(Object.entries(expectedBad));
const good = new Map<string, readonly string[]>(Object.entries(expectedGood));

/** Degrees: a centimetre on the ground. */
const placeTolerance_deg = 1e-7;

describe("a malformed file gets its coded answer", () => {
  test("there are at least forty of them, each with what it must give", () => {
    expect(fixtureNames("bad").length).toBeGreaterThanOrEqual(40);
    expect([...bad.keys()].sort()).toEqual([...fixtureNames("bad")].sort());
  });

  it.each([...bad])("%s", (name, expected) => {
    const { findings } = parseProject(fixtureText("bad", name));
    const found = findings.find(({ code, feature }) => code === expected.code && feature === expected.feature);
    expect(found?.severity, codes(findings).join(", ")).toBe(expected.severity);
    for (const [i, degrees] of (expected.at ?? []).entries()) {
      expect(Math.abs(Number(found?.at?.[i]) - degrees)).toBeLessThan(placeTolerance_deg);
    }
    // A file with a warning only must still be planned: no other error may hide in it.
    if (expected.severity === "warning" && name !== "parcel-drawn-as-a-line.geojson")
      expect(hasError(findings)).toBe(false);
  });

  it.each([...bad.keys()])("%s: every finding says what is wrong, why and what to do, in both unit systems", (name) => {
    for (const { message, reason, remedy } of parseProject(fixtureText("bad", name)).findings) {
      for (const phrase of [message, reason, remedy]) {
        expect(text(phrase, "us")).toMatch(/^[A-Z"\d].*[.?]$/s);
        expect(text(phrase, "metric")).not.toMatch(/undefined|NaN (?!in place)|\[object/);
      }
    }
  });
});

describe("an odd but sound start is taken, and what was mended is said", () => {
  test("each has what it must give", () => {
    expect([...good.keys()].sort()).toEqual([...fixtureNames("good")].sort());
  });

  it.each([...good])("%s", (name, expected) => {
    const read = parseProject(fixtureText("good", name));
    expect(codes(read.findings)).toEqual(expected);
    expect(read.findings.filter(({ severity }) => severity !== "note")).toEqual([]);
    expect(read.ok && read.value.parcels.length).toBeGreaterThan(0);
  });
});

describe("nothing of a file is lost", () => {
  const kinds = [["bad", bad] as const, ["good", good] as const];
  const all = kinds.flatMap(([kind, files]) => [...files.keys()].map((name) => [kind, name] as const));
  const read = all.filter(([kind, name]) => parseProject(fixtureText(kind, name)).ok);

  it.each(read)("%s/%s", (kind, name) => {
    const raw = fixtureText(kind, name).replace("\uFEFF", "");
    const written: unknown = JSON.parse(serializeProject(projectIn(raw)));
    expect(written).toEqual(asCollection(raw));
    expect(JSON.stringify(written)).toBe(JSON.stringify(asCollection(raw)));
  });
});

/** The file's value, with a collection around it when it is a bare feature or geometry. */
function asCollection(raw: string): unknown {
  const value: Json = JSON.parse(raw);
  if (!isJsonObject(value) || value.type === "FeatureCollection") return value;
  const feature = value.type === "Feature" ? value : { type: "Feature", properties: {}, geometry: value };
  return { type: "FeatureCollection", features: [feature] };
}

test("names that the language knows pollute nothing", () => {
  const read = parseProject(fixtureText("good", "members-of-the-language.geojson"));
  expect(Object.hasOwn(Object.prototype, "polluted")).toBe(false);
  expect(read.ok && read.value.blocks[0]?.rows.rowSpacing_m).toBe(2.4384);
  expect(read.ok && read.value.parcels[0]?.key).toBe("__proto__");
  const again = read.ok ? serializeProject(read.value) : "";
  expect(again.match(/"__proto__": ?\{/g)).toHaveLength(4);
  expect(again).toContain('"__proto__":{"polluted":true}');
});

test("every code of the project stage is provoked by one of these files, or by a text too long to be one", () => {
  const source = readFileSync(new URL("../../../src/core/project/findings.ts", import.meta.url), "utf8");
  const known = [...new Set([...source.matchAll(/"(project\/[a-z-]+)"/g)].map(([, code]) => code))].sort();
  const texts = [...bad.keys()]
    .map((name) => fixtureText("bad", name))
    .concat([...good.keys()].map((name) => fixtureText("good", name)))
    .concat(" ".repeat(mostProject_bytes + 1));
  const provoked = new Set<string>(texts.flatMap((each) => codes(parseProject(each).findings)));
  expect(known.length).toBeGreaterThan(40);
  expect(known.filter((code) => code !== undefined && !provoked.has(code))).toEqual([]);
});

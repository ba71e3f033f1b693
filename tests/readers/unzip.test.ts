import { describe, expect, test } from "vitest";
import { mostEntries, unzipped } from "../../src/readers/unzip.ts";
import { firstRecord, zipOf } from "./hostile-zip.ts";

const all = () => true;

function codesOf(archive: Uint8Array, most_bytes?: number): readonly string[] {
  const outcome = unzipped(archive, "a.zip", all, most_bytes);
  expect(outcome.ok).toBe(false);
  return outcome.findings.map(({ code }) => code);
}

function whyOf(archive: Uint8Array): string {
  return unzipped(archive, "a.zip", all)
    .findings.map(({ message }) => message.join(""))
    .join("");
}

test("files come out with their last name, folders and what archivers put beside are left out", () => {
  const archive = zipOf({
    "rows/": "",
    "rows/row 1.txt": "one",
    "__MACOSX/rows/._row 1.txt": "x",
    "._two.txt": "x",
    "Weiß.txt": "",
  });
  const outcome = unzipped(archive, "a.zip", all);
  if (!outcome.ok) throw new Error("not unpacked");
  expect(outcome.value.map(({ name, path, bytes }) => [name, path, new TextDecoder().decode(bytes)])).toEqual([
    ["row 1.txt", "rows/row 1.txt", "one"],
    ["Weiß.txt", "Weiß.txt", ""],
  ]);
});

test("only what is wanted is unpacked", () => {
  const outcome = unzipped(zipOf({ "a.kml": "a", "b.png": "b" }), "a.zip", (path) => path.endsWith(".kml"));
  expect(outcome.ok && outcome.value.map(({ name }) => name)).toEqual(["a.kml"]);
});

test("a large file packed and one as it is come out the same", () => {
  const large = new Uint8Array(3_000_000).map((_, i) => (i * i) % 251);
  const outcome = unzipped(zipOf({ "large.bin": large }), "a.zip", all);
  const bytes = outcome.ok ? outcome.value[0]?.bytes : undefined;
  expect(bytes?.length).toBe(large.length);
  expect(bytes?.every((byte, i) => byte === large[i])).toBe(true);
});

test("what stands before an archive does not move what is in it", () => {
  const archive = zipOf({ "a.txt": "text" });
  const outcome = unzipped(new Uint8Array([...new TextEncoder().encode("#!/bin/sh\n"), ...archive]), "a.zip", all);
  expect(outcome.ok && outcome.value[0]?.bytes.length).toBe(4);
});

describe("path names that lead elsewhere", () => {
  for (const path of ["../../etc/passwd", "/etc/passwd", "C:\\temp\\passwd", "a/../../passwd"]) {
    test(`${path} is only passwd`, () => {
      const outcome = unzipped(zipOf({ [path]: "x" }), "a.zip", all);
      expect(outcome.ok && outcome.value.map(({ name }) => name)).toEqual(["passwd"]);
    });
  }
});

describe("refused", () => {
  test("what would fill the memory is refused before it is unpacked", () => {
    expect(codesOf(zipOf({ "bomb.txt": new Uint8Array(5_000_000) }), 1e6)).toEqual(["readers/archive-too-large"]);
  });

  test("several files that together would fill the memory", () => {
    const half = new Uint8Array(600_000);
    expect(codesOf(zipOf({ "a.txt": half, "b.txt": half }), 1e6)).toEqual(["readers/archive-too-large"]);
  });

  test("a file that holds more than it says is found out while it is unpacked", () => {
    const archive = zipOf({ "bomb.txt": new Uint8Array(5_000_000) });
    const { view, at } = firstRecord(archive);
    view.setUint32(at + 24, 1000, true);
    expect(codesOf(archive, 1e6)).toEqual(["readers/broken-file"]);
  });

  test("a file that says it holds more than its bytes can unpack to", () => {
    const archive = zipOf({ "a.txt": "short" });
    const { view, at } = firstRecord(archive);
    view.setUint32(at + 24, 150_000_000, true);
    expect(whyOf(archive)).toContain("what cannot be");
  });

  test("more files than any of ours would have", () => {
    const many = Object.fromEntries(Array.from({ length: mostEntries + 1 }, (_, i) => [`${i}.txt`, ""]));
    expect(codesOf(zipOf(many))).toEqual(["readers/archive-too-large"]);
  });

  test("an archive that is cut off, at any place", () => {
    const archive = zipOf({ "a.txt": "a text that is long enough to be cut", "b.txt": "another" });
    for (let length = 0; length < archive.length; length++) {
      const outcome = unzipped(archive.subarray(0, length), "a.zip", all);
      expect(outcome.ok, `cut after ${length}`).toBe(false);
    }
  });

  test("a byte that is wrong, anywhere, gives the same file, a finding, or another name, and never throws", () => {
    const archive = zipOf({ "a.txt": "a text that is long enough to be damaged somewhere" });
    for (let i = 0; i < archive.length; i++) {
      const damaged = archive.slice();
      damaged[i] = (damaged[i] ?? 0) ^ 0xff;
      const outcome = unzipped(damaged, "a.zip", all);
      if (outcome.ok)
        expect(
          outcome.value.every(({ bytes }) => bytes.length === 50),
          `byte ${i}`,
        ).toBe(true);
      else expect(outcome.findings).toHaveLength(1);
    }
  });

  test("a file behind a password", () => {
    const archive = zipOf({ "a.txt": "text" });
    const { view, at } = firstRecord(archive);
    view.setUint16(at + 8, 1, true);
    expect(whyOf(archive)).toContain("password");
  });

  test("a way of packing that is not read", () => {
    const archive = zipOf({ "a.txt": "text" });
    const { view, at } = firstRecord(archive);
    view.setUint16(at + 10, 14, true);
    expect(whyOf(archive)).toContain("packed in a way");
  });

  test("nothing at all, and something else", () => {
    expect(codesOf(new Uint8Array())).toEqual(["readers/broken-file"]);
    expect(codesOf(new TextEncoder().encode("PK and nothing behind it ".repeat(10)))).toEqual(["readers/broken-file"]);
  });
});

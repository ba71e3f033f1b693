import { mkdtempSync, rmSync, truncateSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { folderNames } from "../../src/cli/inputs.ts";
import { say } from "./create-terminal.ts";

test("a folder is called after its file, or after the folder of a file called project", () => {
  expect(folderNames(["fields/east.geojson", "samples/acre/project.geojson"], "/work")).toEqual(["east", "acre"]);
});

test("files of the same name get folders of their own, whatever their case", () => {
  expect(folderNames(["a/east.geojson", "b/east.geojson", "c/East.json"], "/work")).toEqual([
    "east",
    "east-2",
    "East-3",
  ]);
});

test("texts of a sequence are numbered", () => {
  expect(folderNames(["all.geojsonl#1", "all.geojsonl#2", "standard input#1"], "/w")).toEqual([
    "all-1",
    "all-2",
    "standard-input-1",
  ]);
});

test.each([
  "..",
  "../..",
  "...geojson",
  ".hidden.geojson",
  "a\\..\\..\\b.json",
  "/",
  "-",
  "\u0000",
  "weird\u202E/..x.json",
])("%j never leads out of the folder", (name) => {
  const [folder = ""] = folderNames([name], "/");
  expect(folder).toMatch(/^[\p{L}\p{N}_][\p{L}\p{N}._-]*$/u);
});

test("a file of 200 MB is refused before it is read", async () => {
  const folder = mkdtempSync(join(tmpdir(), "tautrow-"));
  try {
    const path = join(folder, "huge.geojson");
    writeFileSync(path, "{");
    truncateSync(path, 200e6);
    const { code, notes } = await say(["plan", path]);
    expect([code, notes]).toEqual([2, expect.stringContaining("huge.geojson has 200 MB")]);
  } finally {
    rmSync(folder, { recursive: true });
  }
});

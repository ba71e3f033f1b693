import { mkdtempSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { makeFolder } from "../../src/cli/make-folder.ts";

let home = "";
beforeEach(() => {
  home = mkdtempSync(join(tmpdir(), "folder-"));
});
afterEach(() => rmSync(home, { recursive: true }));

describe("a folder to hand files over in", () => {
  it("is made with those above it, and may be there already", async () => {
    const path = join(home, "a", "b", "c");
    await makeFolder(path);
    await makeFolder(path);
    expect(statSync(path).isDirectory()).toBe(true);
  });

  it("cannot be made of a file, nor below one", async () => {
    const file = join(home, "file");
    writeFileSync(file, "");
    await expect(makeFolder(file)).rejects.toThrow(/EEXIST/);
    await expect(makeFolder(join(file, "below"))).rejects.toThrow(/ENOTDIR|EEXIST/);
  });

  it("is given up where none can be made", async () => {
    await expect(makeFolder("/proc/nowhere/plan")).rejects.toThrow(/ENOENT|EACCES|EPERM|EROFS/);
  });
});

import { unzipSync } from "fflate";
import { describe, expect, test } from "vitest";
import type { Turns } from "../../../src/app/hand-over/in-turns.ts";
import { type Progress, written } from "../../../src/app/hand-over/written.ts";
import type { Chunk, OutFile } from "../../../src/core/exchange/format.ts";

const writtenAt = "2026-11-26T06:00:00Z";

function createTurns(): Turns & { readonly stop: () => void } {
  const control = new AbortController();
  let now = 0;
  // Every look at the clock is a turn later: the page breathes after every step.
  const now_ms = () => {
    now += 40;
    return now;
  };
  return { signal: control.signal, now_ms, breath: () => Promise.resolve(), stop: () => control.abort() };
}

function createFile(name: string, chunks: readonly Chunk[]): OutFile {
  return { name, mediaType: "text/plain", content: { kind: "chunks", chunks: () => chunks } };
}

function write(files: readonly OutFile[], turns: Turns, tell: (progress: Progress) => void = () => undefined) {
  const databaseBytes = async (file: OutFile) => new TextEncoder().encode(`database ${file.name}`);
  return written(files, { stem: "oak", archive: "csv", writtenAt, databaseBytes, tell }, turns);
}

async function unzipped(blob: Blob | undefined): Promise<Readonly<Record<string, string>>> {
  const entries = unzipSync(new Uint8Array((await blob?.arrayBuffer()) ?? new ArrayBuffer(0)));
  return Object.fromEntries(Object.entries(entries).map(([name, bytes]) => [name, new TextDecoder().decode(bytes)]));
}

describe("files that are written", () => {
  test("one file leaves by itself, with the project's name before its own", async () => {
    const whole = await write([createFile("rows.csv", ["name\r\n", "Señora\r\n"])], createTurns());
    expect(whole?.name).toBe("oak-rows.csv");
    expect(whole?.blob.type).toBe("text/plain");
    expect(await whole?.blob.text()).toBe("name\r\nSeñora\r\n");
  });

  test("several files leave as one zip, each whole", async () => {
    const bytes = Uint8Array.from({ length: 200_000 }, (_, i) => 65 + (i % 23));
    const files = [
      createFile("rows.csv", ["one", "two"]),
      createFile("posts.bin", [bytes]),
      createFile("empty.txt", []),
    ];
    const whole = await write(files, createTurns());
    expect(whole?.name).toBe("oak-csv.zip");
    expect(whole?.blob.type).toBe("application/zip");
    const entries = await unzipped(whole?.blob);
    expect(Object.keys(entries)).toEqual(["rows.csv", "posts.bin", "empty.txt"]);
    expect(entries["rows.csv"]).toBe("onetwo");
    expect(entries["posts.bin"]).toBe(new TextDecoder().decode(bytes));
    expect(entries["empty.txt"]).toBe("");
  });

  test("pieces that are one buffer used again come out as they were when they were given", async () => {
    const buffer = new Uint8Array(1);
    const file: OutFile = {
      name: "a.bin",
      mediaType: "application/octet-stream",
      content: {
        kind: "chunks",
        *chunks() {
          for (const value of [1, 2, 3]) {
            buffer[0] = value;
            yield buffer;
          }
        },
      },
    };
    const whole = await write([file], createTurns());
    expect([...new Uint8Array((await whole?.blob.arrayBuffer()) ?? new ArrayBuffer(0))]).toEqual([1, 2, 3]);
  });

  test("a database is made by the door that has one, alone or among others", async () => {
    const database: OutFile = {
      name: "plan.gpkg",
      mediaType: "application/geopackage+sqlite3",
      content: { kind: "database", statements: () => [] },
    };
    const alone = await write([database], createTurns());
    expect(alone?.name).toBe("oak-plan.gpkg");
    expect(await alone?.blob.text()).toBe("database plan.gpkg");
    const both = await write([database, createFile("about.txt", ["about"])], createTurns());
    expect(await unzipped(both?.blob)).toEqual({ "plan.gpkg": "database plan.gpkg", "about.txt": "about" });
  });

  test("tell how far they are: which of how many, and bytes that only grow", async () => {
    const told: Progress[] = [];
    const text = "x".repeat(90_000);
    const files = [createFile("a.txt", [text, text]), createFile("b.txt", [text])];
    await write(files, createTurns(), (progress) => told.push(progress));
    expect([...new Set(told.map(({ file, number, files: of }) => `${file} ${number}/${of}`))]).toEqual([
      "a.txt 1/2",
      "b.txt 2/2",
    ]);
    const bytes = told.map((progress) => progress.bytes);
    expect(bytes).toEqual([...bytes].sort((a, b) => a - b));
    expect(bytes.at(-1)).toBeGreaterThan(0);
  });

  test("stopped in the middle they give nothing", async () => {
    const turns = createTurns();
    let given = 0;
    const file: OutFile = {
      name: "vines.csv",
      mediaType: "text/csv",
      content: {
        kind: "chunks",
        *chunks() {
          for (;;) {
            given++;
            if (given === 5) turns.stop();
            yield "one more vine\r\n";
          }
        },
      },
    };
    expect(await write([file], turns)).toBeNull();
    expect(given).toBe(5);
  });
});

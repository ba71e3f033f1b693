import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { copyName } from "../../../src/app/keeping/copy-name.ts";
import { failureOf } from "../../../src/app/keeping/failure.ts";
import { fileFault, hasChanged } from "../../../src/app/keeping/linked-file.ts";
import { idInAddress, withProject } from "../../../src/app/keeping/project-address.ts";
import type { ProjectRecord, Revision } from "../../../src/app/keeping/records.ts";
import { createSaveSchedule } from "../../../src/app/keeping/save-schedule.ts";
import { mayWrite } from "../../../src/app/keeping/shelf.ts";
import { readMessage } from "../../../src/app/keeping/tab-messages.ts";
import { thinRevisions } from "../../../src/app/keeping/thin-revisions.ts";
import { lostAfter } from "../../bench/keeping/kill-and-reopen.ts";
import { createClock } from "./create-shelf.ts";

describe("naming a copy", () => {
  test.each([
    ["North field", [], "North field (copy)"],
    ["North field", ["North field (copy)"], "North field (copy 2)"],
    ["North field (copy)", ["North field", "North field (copy)"], "North field (copy 2)"],
    ["North field (copy 2)", ["North field (copy)", "North field (copy 2)"], "North field (copy 3)"],
    ["(copy)", [], "(copy) (copy)"],
  ])("%s beside %j becomes %s", (name, taken, expected) => {
    expect(copyName(name, taken)).toBe(expected);
  });
});

describe("thinning the kept texts", () => {
  const minute_ms = 60_000;

  /** Keeps a text at each of these times, thinning after each as it is done in use. */
  function keptOver(times: readonly number[]): readonly Revision[] {
    let kept: readonly Revision[] = [];
    for (const [i, at] of times.entries()) kept = thinRevisions([...kept, { revision: i + 1, at }]);
    return kept;
  }

  test("the newest two always stay, and never more than ten do", () => {
    const gaps = fc.array(fc.integer({ min: 1, max: 5_000_000 }), { minLength: 1, maxLength: 80 });
    fc.assert(
      fc.property(gaps, (steps) => {
        let at = 0;
        const kept = keptOver(
          steps.map((gap) => {
            at += gap;
            return at;
          }),
        );
        expect(kept.length).toBeLessThanOrEqual(10);
        const newest = steps.length;
        expect(kept.slice(-2).map(({ revision }) => revision)).toEqual(newest === 1 ? [1] : [newest - 1, newest]);
      }),
      { seed: 3, numRuns: 300 },
    );
  });

  test("after three hours of work without a pause there is still a text from each of the last two hours", () => {
    const times = Array.from({ length: 3 * 3600 }, (_, second) => second * 1000);
    const kept = keptOver(times);
    const last = times.at(-1) ?? 0;
    const ages_min = kept.map(({ at }) => (last - at) / minute_ms);
    expect(ages_min.some((age) => age > 60)).toBe(true);
    expect(ages_min.some((age) => age > 10 && age <= 60)).toBe(true);
    expect(ages_min.some((age) => age > 1 && age <= 10.1)).toBe(true);
  });

  test("a pause of a month takes nothing away", () => {
    const before = keptOver([0, minute_ms, 2 * minute_ms]);
    const after = thinRevisions([...before, { revision: 4, at: 30 * 1440 * minute_ms }]);
    expect(after.map(({ revision }) => revision)).toContain(1);
  });
});

describe("when to save", () => {
  test("a single change at once, a stream of them four times a second, one after another", async () => {
    const clock = createClock();
    const begun: number[] = [];
    let running = 0;
    const schedule = createSaveSchedule(clock, async () => {
      expect(++running).toBe(1);
      begun.push(clock.now());
      await new Promise<void>((resolve) => clock.later(resolve, 100));
      running--;
    });
    const start = clock.now();
    for (let i = 0; i < 40; i++) {
      schedule.changed();
      await clock.pass(50);
    }
    await clock.pass(1000);
    const gaps = begun.map((at, i) => at - (begun[i - 1] ?? start));
    expect(Math.max(...gaps)).toBeLessThanOrEqual(800);
    expect(begun.length).toBeGreaterThan(2);
    const count = begun.length;
    await clock.pass(5000);
    expect(begun).toHaveLength(count);
  });

  test("a change during a saving is saved after it", async () => {
    const clock = createClock();
    let saves = 0;
    const schedule = createSaveSchedule(clock, async () => {
      saves++;
      await new Promise<void>((resolve) => clock.later(resolve, 300));
    });
    schedule.changed();
    await clock.pass(250);
    expect(saves).toBe(1);
    schedule.changed();
    await clock.pass(1000);
    expect(saves).toBe(2);
  });
});

describe("whether a text may take the place of what is stored", () => {
  const record: ProjectRecord = {
    id: "a",
    name: "A",
    changed: 0,
    thumbnail: "",
    revision: 3,
    revisions: [],
    deleted: null,
    formatVersion: 1,
  };

  test.each([
    ["nothing is there yet", undefined, null, true],
    ["it was made from what is there", record, 3, true],
    ["what is there is newer", record, 2, false],
    ["another page kept a project of that id first", record, null, false],
    ["what was there has been cleared away", undefined, 3, true],
    ["it was deleted meanwhile, which counts as a change", { ...record, revision: 4, deleted: 1 }, 3, false],
  ])("%s", (_, stored, base, expected) => {
    expect(mayWrite(stored, base)).toBe(expected);
  });
});

describe("what a refusal by the browser means", () => {
  test.each([
    ["QuotaExceededError", "full"],
    ["SecurityError", "denied"],
    ["InvalidStateError", "denied"],
    ["VersionError", "newer"],
    ["BlockedError", "blocked"],
    ["DataError", "other"],
  ])("%s is %s, with what to do about it", (name, code) => {
    const failure = failureOf(new DOMException("said by the browser", name));
    expect(failure.code).toBe(code);
    expect(failure.remedy).toMatch(/\.$/);
  });

  test("something that is no error at all is told too", () => {
    expect(failureOf("odd")).toMatchObject({ code: "other" });
  });

  test.each([
    ["NotFoundError", "no longer where it was"],
    ["NotAllowedError", "not allowed to write"],
    ["QuotaExceededError", "no room on the disk"],
    ["NoModificationAllowedError", "in use by another program"],
    ["DataError", "could not be written"],
  ])("a file and %s: %s", (name, words) => {
    expect(fileFault(new DOMException("", name), "field.geojson")).toContain(words);
  });
});

describe("whether a file is still what it was", () => {
  const stamp = { lastModified: 10, size: 20, digest: "aa" };

  test.each([
    ["untouched", stamp, false],
    ["touched, the same text", { ...stamp, lastModified: 11 }, false],
    ["another text of the same size", { ...stamp, lastModified: 11, digest: "bb" }, true],
    ["another size", { ...stamp, lastModified: 11, size: 21 }, true],
  ])("%s", (_, is, expected) => {
    expect(hasChanged(stamp, is)).toBe(expected);
  });

  test("without a digest a later time counts as a change", () => {
    expect(hasChanged({ ...stamp, digest: null }, { ...stamp, lastModified: 11, digest: null })).toBe(true);
  });
});

describe("the address of a kept project", () => {
  test("names it in place of the sample it came from, and nothing else is lost", () => {
    const next = withProject(new URL("http://127.0.0.1/app/?bench&sample=acre-with-notch"), "1234");
    expect(next.searchParams.has("sample")).toBe(false);
    expect(next.searchParams.has("bench")).toBe(true);
    expect(idInAddress(next)).toBe("1234");
    expect(idInAddress(withProject(next, null))).toBeNull();
  });

  test.each(["#", "#steps", "#project=", ""])("%s names none", (hash) => {
    expect(idInAddress(new URL(`http://127.0.0.1/${hash}`))).toBeNull();
  });
});

describe("messages between tabs", () => {
  test.each([
    { kind: "kept", id: "a", revision: 3 },
    { kind: "wish", id: "a" },
    { kind: "cannot", id: "a", why: "storage is full" },
    { kind: "list" },
  ])("%j is understood", (message) => {
    expect(readMessage(message)).toEqual(message);
  });

  test.each([null, 3, "kept", {}, { kind: "kept", id: "a" }, { kind: "wish" }, { kind: "unknown", id: "a" }])(
    "%j of another version of the page is left alone",
    (message) => {
      expect(readMessage(message)).toBeNull();
    },
  );
});

describe("judging a kill", () => {
  const states = [
    { at: 1000, text: "a" },
    { at: 2000, text: "b" },
    { at: 3000, text: "c" },
  ];

  test("the last state, and one that was current a second before, are good; an older or an unknown one is not", () => {
    expect(lostAfter({ states, killed: 9000 }, "c").fault).toBeNull();
    expect(lostAfter({ states, killed: 3500 }, "b")).toEqual({ fault: null, lost_ms: 500 });
    expect(lostAfter({ states, killed: 4500 }, "b").fault).toContain("1500 ms");
    expect(lostAfter({ states, killed: 3500 }, "z").fault).toContain("never was");
    expect(lostAfter({ states, killed: 3500 }, undefined).fault).toContain("not readable");
  });
});

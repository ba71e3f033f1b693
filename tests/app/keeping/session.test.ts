import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { renamed } from "../../../src/app/keeping/project-texts.ts";
import type { ProjectRecord } from "../../../src/app/keeping/records.ts";
import { createSession, type SessionParts, type SessionStatus } from "../../../src/app/keeping/session.ts";
import { withSetting } from "../../../src/core/project/edits.ts";
import { parseProject } from "../../../src/core/project/parse.ts";
import type { Project } from "../../../src/core/project/project.ts";
import { serializeProject } from "../../../src/core/project/serialize.ts";
import { createClock, createShelf } from "./create-shelf.ts";

const sample = readFileSync(new URL("../../../samples/acre-with-notch/project.geojson", import.meta.url), "utf8");

function createField(): Project {
  const read = parseProject(sample);
  if (!read.ok) throw new Error("the sample can not be read");
  return read.value;
}

function spaced(project: Project, spacing: string): Project {
  const changed = withSetting(project, "rows.rowSpacing", spacing);
  if (!changed.ok) throw new Error(`no spacing: ${spacing}`);
  return changed.value;
}

function createKept(changes: Partial<SessionParts> = {}) {
  const [shelf, clock] = [createShelf(), createClock()];
  const statuses: SessionStatus["kind"][] = [];
  let ids = 0;
  const parts: SessionParts = {
    shelf,
    clock,
    project: createField(),
    record: null,
    isUnkept: false,
    newId: () => `project-${++ids}`,
    thumbnailOf: () => "<svg/>",
    isSoleWriter: () => false,
    onStatus: ({ kind }) => statuses.push(kind),
    onWritten: () => undefined,
    asCopy: (project) => Promise.resolve(renamed(project, `${project.name} (copy)`)),
    ...changes,
  };
  return { shelf, clock, statuses, session: createSession(parts), project: parts.project };
}

const full = Object.assign(new Error("no room"), { name: "QuotaExceededError" });

function written(record: ProjectRecord): ProjectRecord {
  return { ...record, revision: record.revision + 1 };
}

describe("keeping one project", () => {
  test("a sample that nobody changed is never written", async () => {
    const { shelf, clock, session } = createKept();
    await clock.pass(5000);
    expect(await session.flush()).toBe(true);
    expect(shelf.writings).toEqual([]);
    expect(session.status().kind).toBe("untouched");
  });

  test("a file of one's own is written from its opening on", async () => {
    const { shelf, clock, project } = createKept({ isUnkept: true });
    await clock.pass(1000);
    expect([...shelf.texts.values()]).toEqual([serializeProject(project)]);
  });

  test("a change is written within a second, however fast more of them come", async () => {
    const { shelf, clock, session, project } = createKept();
    for (let i = 1; i <= 30; i++) {
      session.take(spaced(project, `${6 + i / 10} ft`));
      await clock.pass(50);
      const oldestUnkept_ms = 50 * i - 1000;
      if (oldestUnkept_ms <= 0) continue;
      const kept = shelf.texts.get(`project-1 ${shelf.records.get("project-1")?.revision}`);
      const spacing = Number(/"rowSpacing":"([\d.]+) ft"/.exec(kept ?? "")?.[1]);
      expect(spacing).toBeGreaterThanOrEqual(6 + (i - 20) / 10 - 1e-9);
    }
    await clock.pass(1000);
    expect(session.status().kind).toBe("kept");
    expect([...shelf.texts.values()].at(-1)).toContain('"9 ft"');
  });

  test("every text counts the revision up and is made from the one before", async () => {
    const { shelf, clock, session, project } = createKept();
    for (const spacing of ["7 ft", "8.5 ft", "9 ft"]) {
      session.take(spaced(project, spacing));
      await clock.pass(1000);
    }
    expect(shelf.writings.map(({ base, record }) => [base, record.revision])).toEqual([
      [null, 1],
      [1, 2],
      [2, 3],
    ]);
  });

  test("a change that is taken back before it was written needs no writing", async () => {
    const { shelf, clock, session, project } = createKept();
    session.take(spaced(project, "9 ft"));
    session.take(project);
    await clock.pass(2000);
    expect(shelf.writings).toEqual([]);
    expect(session.status().kind).toBe("untouched");
  });

  test("what another page wrote meanwhile is never written over: the later changes become a copy", async () => {
    const { shelf, clock, session, project } = createKept();
    session.take(spaced(project, "9 ft"));
    await clock.pass(1000);
    const theirs = shelf.records.get("project-1");
    if (!theirs) throw new Error("nothing was kept");
    shelf.records.set("project-1", written(theirs));
    shelf.texts.set("project-1 2", "theirs");
    session.take(spaced(project, "10 ft"));
    await clock.pass(1000);
    expect(shelf.texts.get("project-1 2")).toBe("theirs");
    expect(shelf.records.get("project-2")?.name).toBe("Acre with a notch (copy)");
    expect(shelf.texts.get("project-2 1")).toContain('"10 ft"');
    expect(session.record()?.id).toBe("project-2");
    session.take(spaced(session.project(), "11 ft"));
    await clock.pass(1000);
    expect(shelf.texts.get("project-2 2")).toContain('"11 ft"');
  });

  test("a project that was cleared away with the browser's data is written anew", async () => {
    const { shelf, clock, session, project } = createKept();
    session.take(spaced(project, "9 ft"));
    await clock.pass(1000);
    shelf.records.clear();
    session.take(spaced(project, "10 ft"));
    await clock.pass(1000);
    expect(shelf.records.get("project-1")?.revision).toBe(2);
  });
});

describe("when nothing can be written", () => {
  test("it says so, keeps all in memory, and writes it by itself when there is room again", async () => {
    const { shelf, clock, session, statuses, project } = createKept();
    shelf.refuse = full;
    session.take(spaced(project, "9 ft"));
    await clock.pass(1000);
    expect(session.status()).toMatchObject({ kind: "not-kept", failure: { code: "full" } });
    expect(await session.flush()).toBe(false);
    shelf.refuse = null;
    await clock.pass(60_000);
    expect(session.status().kind).toBe("kept");
    expect(statuses.at(-1)).toBe("kept");
    expect([...shelf.texts.values()].at(-1)).toContain('"9 ft"');
  });

  test("the next change tries again at once", async () => {
    const { shelf, clock, session, project } = createKept();
    shelf.refuse = full;
    session.take(spaced(project, "9 ft"));
    await clock.pass(700);
    shelf.refuse = null;
    session.take(spaced(project, "10 ft"));
    await clock.pass(700);
    expect(session.status().kind).toBe("kept");
  });

  test("older texts are given up before the newest is", async () => {
    const { shelf, clock, session, project } = createKept();
    for (let i = 0; i < 4; i++) {
      session.take(spaced(project, `${7 + i} ft`));
      await clock.pass(120_000);
    }
    const before = shelf.records.get("project-1")?.revisions.length ?? 0;
    expect(before).toBeGreaterThan(2);
    const write = shelf.write;
    let attempts = 0;
    shelf.write = (writing) => (++attempts === 1 ? Promise.reject(full) : write(writing));
    session.take(spaced(project, "12 ft"));
    await clock.pass(1000);
    expect(session.status().kind).toBe("kept");
    expect(shelf.records.get("project-1")?.revisions.map(({ revision }) => revision)).toEqual([4, 5]);
    expect([...shelf.texts.keys()]).toEqual(["project-1 4", "project-1 5"]);
  });
});

describe("when the page goes away", () => {
  test("nothing is read first where this tab has the lock", async () => {
    const { shelf, clock, session, project } = createKept({ isSoleWriter: () => true });
    session.take(spaced(project, "9 ft"));
    await clock.pass(1000);
    session.take(spaced(project, "10 ft"));
    const leaving = session.flush();
    // It has been handed over before anything was waited for.
    expect(shelf.writings.at(-1)).toMatchObject({ isSoleWriter: true, base: 1 });
    await leaving;
    expect(session.status().kind).toBe("kept");
  });

  test("without the lock what is stored is looked at before", async () => {
    const { shelf, clock, session, project } = createKept();
    for (const spacing of ["9 ft", "10 ft"]) {
      session.take(spaced(project, spacing));
      await clock.pass(1000);
    }
    // The first one has an id that nobody else knows.
    expect(shelf.writings.map(({ isSoleWriter }) => isSoleWriter)).toEqual([true, false]);
  });
});

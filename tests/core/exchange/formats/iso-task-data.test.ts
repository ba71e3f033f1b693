import { strFromU8, unzipSync } from "fflate";
import { ISOXMLManager } from "isoxml";
import { describe, expect, test } from "vitest";
import type { HandOver } from "../../../../src/core/exchange/hand-over.ts";
import { createPlanner } from "../../../../src/core/planner.ts";
import {
  createBlock,
  createParcel,
  createProject,
  createRowSettings,
  rectangle,
} from "../../../support/create-project.ts";
import { bytesOf, handedOver } from "../../../support/handed-over.ts";
import { readSample } from "../../../support/sample-plans.ts";
import { survived } from "../../../support/survived.ts";

/*
 * The schema of ISO 11783-10 (ISO11783_TaskFile_V4-3.xsd) has no terms of use in it, so it is not here; its facets were read off it in the trial
 * that FORMATS.md tells of, and are held below. A second reader is the package isoxml.
 */
const most_m = 0.002;
const brook = createPlanner().plan(readSample("brook-and-two-blocks"));
const all = { as: "iso-task-data", of: ["parcels", "blocks", "rows"] } as const;

function unpacked(handed: HandOver): string {
  const entries = unzipSync(bytesOf(handed)["taskdata.zip"] ?? new Uint8Array());
  expect(Object.keys(entries)).toEqual(["TASKDATA/TASKDATA.XML"]);
  return strFromU8(entries["TASKDATA/TASKDATA.XML"] ?? new Uint8Array());
}

const attributesOf = (xml: string, element: string, attribute: string) =>
  [...xml.matchAll(new RegExp(`<${element}\\b[^>]*? ${attribute}="([^"]*)"`, "g"))].map(([, value = ""]) => value);

describe("the task file", () => {
  const xml = unpacked(handedOver(brook, all));

  test("is of version 4.3, from a desk", () => {
    expect(xml).toMatch(
      /^<\?xml version="1.0" encoding="UTF-8"\?>\n<ISO11783_TaskData VersionMajor="4" VersionMinor="3" /,
    );
    expect(xml).toContain('DataTransferOrigin="1"');
  });

  test("has a line a row, from A to B, not repeated and not lengthened", () => {
    const lines = [...xml.matchAll(/<GPN [^>]*>(.*?)<\/GPN>/g)];
    expect(lines.length).toBe(brook.rows?.rows.length);
    for (const [whole = "", inside = ""] of lines) {
      expect(whole).toMatch(/ C="1" E="4" F="4" I="16">/);
      expect(inside).toMatch(/^<LSG A="5"><PNT A="6" C="\S+" D="\S+"\/><PNT A="7" C="\S+" D="\S+"\/><\/LSG>$/);
    }
  });

  // Facets: ids of letters and a number, designators of at most 32 letters, at most 9 decimals, whole square metres.
  test("keeps to the facets of the standard", () => {
    for (const [element, pattern] of [
      ["PFD", /^PFD\d+$/],
      ["GGP", /^GGP\d+$/],
      ["GPN", /^GPN\d+$/],
    ] as const) {
      const ids = attributesOf(xml, element, "A");
      for (const id of ids) expect(id).toMatch(pattern);
      expect(new Set(ids).size).toBe(ids.length);
      expect(ids.length).toBeGreaterThan(0);
    }
    for (const [element, attribute] of [
      ["PFD", "C"],
      ["PLN", "B"],
      ["GGP", "B"],
      ["GPN", "B"],
    ] as const) {
      for (const name of attributesOf(xml, element, attribute)) expect([...name].length).toBeLessThanOrEqual(32);
    }
    for (const lat of attributesOf(xml, "PNT", "C")) expect(lat).toMatch(/^-?\d{1,2}\.\d{9}$/);
    for (const lon of attributesOf(xml, "PNT", "D")) expect(lon).toMatch(/^-?\d{1,3}\.\d{9}$/);
    for (const area of attributesOf(xml, "PFD", "D")) expect(area).toMatch(/^\d+$/);
  });

  // What the schema does not catch: rings of two places, lines of one (FORMATS, A5).
  test("every ring is closed over at least three places", () => {
    for (const [, ring = ""] of xml.matchAll(/<LSG A="[12]">(.*?)<\/LSG>/gs)) {
      const places = [...ring.matchAll(/C="(\S+)" D="(\S+)"/g)].map(([, lat, lon]) => `${lat} ${lon}`);
      expect(places.length).toBeGreaterThan(3);
      expect(places[0]).toBe(places.at(-1));
    }
  });

  test("its area is that of the parcels", () => {
    const [area] = attributesOf(xml, "PFD", "D");
    expect(Number(area)).toBeCloseTo(brook.ground?.parcelArea_m2 ?? Number.NaN, -1);
  });

  test("what it has no place for is told", () => {
    const { findings } = handedOver(brook, all);
    const told = findings.find(({ code }) => code === "exchange/columns-left-out");
    expect(told?.severity).toBe("note");
    expect(told?.message.join("")).toContain("area_m2");
  });
});

test("two parcels are two fields, each with its own rows", () => {
  const project = createProject({
    parcels: [
      createParcel([rectangle(80, 60)], { key: "north" }),
      createParcel([rectangle(80, 60, [300, 0])], { key: "a name that is far too long for a terminal" }),
    ],
    blocks: [createBlock(createRowSettings({}))],
  });
  const plan = createPlanner().plan(project);
  const handed = handedOver(plan, all);
  const xml = unpacked(handed);
  const fields = xml.split("<PFD ").slice(1);
  expect(fields.length).toBe(2);
  const lines = fields.map((field) => field.match(/<GPN /g)?.length ?? 0);
  expect(lines.reduce((sum, count) => sum + count, 0)).toBe(plan.rows?.rows.length);
  for (const count of lines) expect(count).toBeGreaterThan(0);
  expect(handed.names.changed.map(({ wished }) => wished)).toContain("a name that is far too long for a terminal");
});

test("rows alone are a field without an outline", () => {
  const xml = unpacked(handedOver(brook, { as: "iso-task-data", of: ["rows"] }));
  expect(attributesOf(xml, "PFD", "D")).toEqual(["0"]);
  expect(xml).not.toContain("<PLN");
});

test("every field, zone and row comes back in its place and by its name", async () => {
  const handed = handedOver(brook, all);
  const back = await survived(handed, false);
  expect(back).toMatchObject({ lost: [], handed: handed.layers.reduce((sum, { count }) => sum + count, 0) });
  expect(back.back).toBe(back.handed);
  expect(back.worst_m).toBeLessThan(most_m);
});

test("a second reader takes it without a warning, name by name and place by place", async () => {
  const handed = handedOver(brook, all);
  const manager = new ISOXMLManager();
  await manager.parseISOXMLFile(bytesOf(handed)["taskdata.zip"] ?? new Uint8Array(), "application/zip");
  expect(manager.getWarnings()).toEqual([]);
  const fields = manager.rootElement.attributes.Partfield ?? [];
  expect(fields.length).toBe(1);
  const patterns = (fields[0]?.attributes.GuidanceGroup ?? []).flatMap(
    ({ attributes }) => attributes.GuidancePattern ?? [],
  );
  const rows = handed.layers.find(({ kind }) => kind === "rows");
  const wished = Array.from(rows?.features() ?? [], (row) => ({
    name: handed.names.of(row),
    places:
      row.geometry.shape === "line"
        ? row.geometry.places.map(({ at: [lon, lat] }) => [lat.toFixed(9), lon.toFixed(9)])
        : [],
  }));
  const told = patterns.map(({ attributes: { GuidancePatternDesignator, LineString } }) => ({
    name: GuidancePatternDesignator,
    places: (LineString?.[0]?.attributes.Point ?? []).map(({ attributes }) => [
      attributes.PointNorth.toFixed(9),
      attributes.PointEast.toFixed(9),
    ]),
  }));
  expect(told).toEqual(wished);
});

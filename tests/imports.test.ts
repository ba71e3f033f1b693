import { expect, test } from "vitest";
import { brokenRules } from "./support/house-rules.ts";
import { importsOf, readImports } from "./support/imports.ts";

test("every import under src keeps to the picture of the house", () => {
  const imports = readImports("src");
  expect(imports.length).toBeGreaterThan(20);
  expect(brokenRules(imports)).toEqual([]);
});

test.each([
  ["src/core/rows/rows.ts", 'import { drip } from "../drip/drip.ts";', "a stage looks to its left only"],
  ["src/core/rows/rows.ts", 'import type { Drip } from "../drip/drip.ts";', "a stage looks to its left only"],
  ["src/core/rows/rows.ts", 'type D = import("../drip/drip.ts").Drip;', "a stage looks to its left only"],
  ["src/core/drip/drip.ts", 'import type { Plan } from "../plan.ts";', "a stage knows stages to its left"],
  ["src/core/plane/line.ts", 'import type { Row } from "../rows/rows.ts";', "the ground floor knows nothing above it"],
  ["src/core/units.ts", 'import { unitsOf } from "./project/project.ts";', "the ground floor knows nothing above it"],
  ["src/core/exchange/csv.ts", 'import { page } from "../sheets/page.ts";', "what hands over knows the plan"],
  ["src/core/exchange/csv.ts", 'import { createPlanner } from "../planner.ts";', "what hands over knows the plan"],
  ["src/core/drawing/snap.ts", 'import { rows } from "../rows/rows.ts";', "drawing knows project, ground"],
  ["src/core/rows/rows.ts", 'import { snap } from "../drawing/snap.ts";', "a stage knows stages to its left"],
  ["src/core/extras/more.ts", 'import { say } from "../finding.ts";', "extras has no place in the picture"],
  ["src/core/rows/rows.ts", 'import { store } from "../../app/store.ts";', "core may not import app"],
  ["src/plugin/plan-control.ts", 'import { store } from "../app/store.ts";', "plugin may not import app"],
  ["src/cli/main.ts", 'import { drag } from "../plugin/drag.ts";', "cli may not import plugin"],
  ["src/core/rows/rows.ts", 'import { readFileSync } from "node:fs";', "not a package of the core"],
  ["src/core/rows/rows.ts", 'import { h } from "preact";', "not a package of the core"],
  ["src/core/rows/rows.ts", 'import proj4 from "proj4";', "belongs in src/core/plane/"],
  ["src/app/main.ts", 'import proj4 from "proj4";', "belongs in src/core/plane/, src/core/systems/"],
  ["src/app/main.ts", 'const tiff = await import("geotiff");', "belongs in src/readers/"],
  ["src/readers/tiff.ts", 'import { store } from "../app/store.ts";', "readers may not import app"],
  ["src/app/main.ts", 'import { readFileSync } from "node:fs";', "only the command line touches the machine"],
  ["src/app/main.ts", 'const fs = await import("node:fs");', "only the command line touches the machine"],
  ["src/app/main.ts", 'import { kinks } from "@turf/kinks";', "Turf is used in src/core/plane/validity.ts"],
  ["src/core/plane/overlay.ts", 'import { area as a } from "@turf/turf";', "Turf measures on a sphere"],
  ["src/core/plane/overlay.ts", 'import { length } from "@turf/length";', "Turf measures on a sphere"],
  ["src/core/plane/overlay.ts", 'import { pointToLineDistance } from "@turf/turf";', "Turf measures on a sphere"],
  ["src/core/plane/overlay.ts", 'import * as turf from "@turf/turf";', "name what is taken from Turf"],
  ["src/plugin/plan-control.ts", 'import { Map } from "maplibre-gl";', "takes maplibre-gl as types"],
  ["src/core/rows/rows.ts", 'export { say } from "../finding.ts";', "only an index.ts re-exports"],
  ["src/app/utils/text.ts", 'import { h } from "preact";', "no folder of leftovers"],
])("%s with %s is refused", (file, text, rule) => {
  expect(brokenRules(importsOf(file, text)).join("\n")).toContain(rule);
});

test.each([
  ["src/core/drip/drip.ts", 'import type { Rows } from "../rows/rows.ts";'],
  ["src/core/plane/validity.ts", 'import { kinks } from "@turf/kinks";'],
  ["src/core/exchange/csv.ts", 'import type { Plan } from "../plan.ts";'],
  ["src/core/systems/system.ts", 'import proj4 from "proj4";'],
  ["src/readers/tiff.ts", 'import GeoTIFF from "geotiff";'],
  ["src/cli/commands/heights.ts", 'import { readElevationFile } from "../../readers/read-elevation-file.ts";'],
  ["src/core/index.ts", 'export { say } from "./finding.ts";'],
  ["src/plugin/plan-control.ts", 'import type { IControl } from "maplibre-gl";'],
  ["src/plugin/plan-control.ts", 'import { type IControl, type Map } from "maplibre-gl";'],
  ["src/app/main.ts", 'import workerUrl from "maplibre-gl/dist/worker.js?worker&url";'],
])("%s with %s is fine", (file, text) => {
  expect(importsOf(file, text)).toHaveLength(1);
  expect(brokenRules(importsOf(file, text))).toEqual([]);
});

test("a circle of files is found, through types too", () => {
  const circle = [
    ...importsOf("src/core/rows/a.ts", 'import { b } from "./b.ts";'),
    ...importsOf("src/core/rows/b.ts", 'import type { C } from "./c.ts";'),
    ...importsOf("src/core/rows/c.ts", 'import { a } from "./a.ts";'),
  ];
  expect(brokenRules(circle)).toEqual([
    "src/core/rows/a.ts → src/core/rows/b.ts → src/core/rows/c.ts → src/core/rows/a.ts: no circles",
  ]);
});

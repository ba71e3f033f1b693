import { isFeatureCollection } from "geojson-validation";
import { expect, test } from "vitest";
import type { PipeLine } from "../../../src/core/drip/watering.ts";
import { trenchJson } from "../../../src/core/exchange/trench-json.ts";
import { trenchProfileSvg } from "../../../src/core/sheets/trench-profile-svg.ts";
import { createTrenchPlan } from "../../support/create-trench-plan.ts";
import { cellsOf, collectionOf } from "../../support/handed-over.ts";

const wide = { size: "pvc-pn10-63mm", outside_mm: 63, inside_mm: 57, stick_m: 6, joint: "solvent" } as const;
const narrow = { size: "pvc-pn10-32mm", outside_mm: 32, inside_mm: 28.4, stick_m: 6, joint: "solvent" } as const;

/** The main to the first row; from there the line of set 1 to two rows, and that of set 2 past them. */
const pipes: readonly PipeLine[] = [
  { line: 0, pipe: wide, points: [1, 2, 3], tees: [3], length_m: 8 },
  { line: 1, pipe: wide, points: [4, 5], tees: [4, 5], length_m: 4 },
  { line: 2, pipe: narrow, points: [4, 5, 6, 7], tees: [6, 7], length_m: 8 },
];
const level = () => 100;
const plan = createTrenchPlan(level, {}, pipes);
const bare = createTrenchPlan(level);

test("the plan as JSON has every pipe and what lies side by side from station to station", () => {
  const { trench } = plan;
  const json = trenchJson(plan, "metric");
  expect(json.pipes.map(({ line, size }) => [line, size])).toEqual(
    trench?.pipes.map(({ line, pipe }) => [line, pipe.size]),
  );
  const [main] = json.branches;
  expect(main?.pipes[0]?.lines).toEqual([{ line: 0, size: wide.size }]);
  expect(main?.pipes[1]?.lines).toEqual([
    { line: 1, size: wide.size },
    { line: 2, size: narrow.size },
  ]);
  expect(main?.pipes[0]?.to_m).toBe(main?.pipes[1]?.from_m);
  const met = main?.stations.flatMap((station) => station.met) ?? [];
  expect(met).toContain("valve of set 1");
  expect(met).toContain("from here on PVC 10 bar, 63 mm (set 1) beside PVC 10 bar, 32 mm (set 2)");
});

test("as GeoJSON every pipe is a line of its own between its stations, side by side on one way", () => {
  const collection = collectionOf(plan, ["route", "pipes", "fittings"]);
  expect(isFeatureCollection(collection, true)).toEqual([]);
  const ids = collection.features.map(({ id }) => id);
  expect(new Set(ids).size).toBe(ids.length);
  const drawn = collection.features.filter(({ properties }) => properties?.role === "pipe");
  expect(drawn.slice(0, 3).map(({ properties }) => [properties?.line, properties?.size])).toEqual([
    ["main", wide.size],
    ["set 1", wide.size],
    ["set 2", narrow.size],
  ]);
  const [first, second, third] = drawn.map(({ geometry }) =>
    geometry.type === "LineString" ? geometry.coordinates : [],
  );
  expect(first).toHaveLength(4);
  expect(second).toHaveLength(3);
  expect(third).toEqual(second);
  expect(first?.at(-1)).toEqual(second?.[0]);
});

test("the table for the person who digs names the sizes from every station on", () => {
  const [head, ...lines] = cellsOf(plan, "stations").map((cells) => cells.at(-1));
  expect(head).toBe("pipes");
  expect(lines[0]).toBe(wide.size);
  expect(lines).toContain(`${wide.size} + ${narrow.size}`);
});

test("the profile says what is laid, and where the sets' valves stand", () => {
  const svg = trenchProfileSvg(plan, null, { units: "metric" }) ?? "";
  expect(svg).toMatch(/up to 11.75 m PVC 10 bar, 63 mm;/);
  expect(svg).toMatch(/data-mark="valve"/);
  expect(svg).toMatch(/data-mark="pipes"/);
});

test("where no sizes are chosen none of this is told", () => {
  expect(collectionOf(bare, ["pipes"]).features).toEqual([]);
  expect(cellsOf(bare, "stations")[0]).not.toContain("pipes");
  expect(trenchProfileSvg(bare, null, { units: "metric" })).not.toMatch(/Laid from the|data-mark="pipes"/);
});

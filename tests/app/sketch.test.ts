import { describe, expect, test } from "vitest";
import { newProject } from "../../src/app/commands/new-project.ts";
import { undo } from "../../src/app/commands/undo.ts";
import type { Tool } from "../../src/app/drawing/drawing-state.ts";
import { finish, placeCorner, putAside, takeBack, takeUp, takeUpAgain } from "../../src/app/drawing/sketch.ts";
import { measureTool, parcelTool } from "../../src/app/drawing/tools.ts";
import { typedCorner } from "../../src/app/drawing/typed-corner.ts";
import { createStore, type Store } from "../../src/app/store.ts";
import { drawnThings } from "../../src/core/drawing/drawn.ts";
import { type LonLat, lonLat } from "../../src/core/plane/coordinate.ts";
import { geodesic } from "../support/geodesic.ts";

/** What a typed course may be off on the ellipsoid at a few hundred metres. */
const typed_m = 0.001;

const hole: Tool = { role: "hole", shape: "area", label: "Hole", isWalked: false };
const spot: Tool = { role: "obstacle", shape: "point", label: "Obstacle", isWalked: false };
const height: Tool = { role: "elevation", shape: "point", label: "Spot height", isWalked: false };
const post: Tool = { role: "row", shape: "line", label: "Row that stands", isWalked: false };

const square = [lonLat(-122.458, 38.29), lonLat(-122.456, 38.29), lonLat(-122.456, 38.2915), lonLat(-122.458, 38.2915)];

function createEmptyStore(): Store {
  const store = createStore();
  newProject(store, "metric");
  return store;
}

function drawAll(store: Store, tool: Tool, corners: readonly LonLat[], typedHeight: string | null = null): void {
  takeUp(store, tool);
  for (const at of corners) placeCorner(store, at);
  if (store.drawing.tool.value) finish(store, typedHeight);
}

function drawn(store: Store): readonly string[] {
  return store.project.value ? drawnThings(store.project.value).map(({ key }) => key) : [];
}

describe("a drawing", () => {
  test("becomes a parcel with rows, is selected, and is one step to undo", () => {
    const store = createEmptyStore();
    drawAll(store, parcelTool, square);
    expect(drawn(store)).toEqual(["parcel-1"]);
    expect(store.drawing.selected.value).toBe("parcel-1");
    expect(store.plan.value?.rows?.rows.length).toBeGreaterThan(10);
    undo(store);
    expect(drawn(store)).toEqual([]);
    expect(store.history.value?.steps).toHaveLength(2);
  });
  test("with too few corners stays and says how many are missing", () => {
    const store = createEmptyStore();
    drawAll(store, parcelTool, square.slice(0, 2));
    expect(store.drawing.trouble.value).toBe("Parcel: 1 more corner is needed.");
    expect(store.drawing.corners.value).toHaveLength(2);
    expect(drawn(store)).toEqual([]);
  });
  test("says every corner with its course, and what is taken back", () => {
    const store = createEmptyStore();
    takeUp(store, parcelTool);
    for (const at of square.slice(0, 2)) placeCorner(store, at);
    expect(store.drawing.said.value).toMatch(/^Corner 2 placed, 17\d\.\d+ m at 90°\.$/);
    expect(takeBack(store)).toBe(true);
    expect(store.drawing.said.value).toBe("Corner 2 taken back.");
    expect(takeBack(store)).toBe(true);
    expect(takeBack(store)).toBe(false);
  });
  test("that is given up is not lost: it is taken up again with all its corners", () => {
    const store = createEmptyStore();
    takeUp(store, parcelTool);
    for (const at of square) placeCorner(store, at);
    putAside(store);
    expect(store.drawing.tool.value).toBeNull();
    takeUpAgain(store);
    expect(store.drawing.corners.value).toEqual(square);
    finish(store);
    expect(drawn(store)).toEqual(["parcel-1"]);
    expect(store.drawing.putAside.value).toBeNull();
  });
  test("of a spot or of two end posts ends by itself", () => {
    const store = createEmptyStore();
    takeUp(store, spot);
    for (const at of square.slice(0, 1)) placeCorner(store, at);
    takeUp(store, post);
    for (const at of square.slice(0, 2)) placeCorner(store, at);
    expect(drawn(store)).toEqual(["obstacle-1", "row-1"]);
    expect(store.drawing.tool.value).toBeNull();
  });
  test("of a spot height waits for its height", () => {
    const store = createEmptyStore();
    drawAll(store, height, square.slice(0, 1));
    expect(store.drawing.trouble.value).toBe("Type the height of this place.");
    finish(store, "125.6 m");
    expect(store.project.value?.spotHeights.map(({ height_m }) => height_m)).toEqual([125.6]);
  });
  test("of a hole goes into the parcel around it, and without a parcel is refused", () => {
    const store = createEmptyStore();
    const inside = [lonLat(-122.4575, 38.2905), lonLat(-122.4565, 38.2905), lonLat(-122.4565, 38.291)];
    drawAll(store, hole, inside);
    expect(store.drawing.trouble.value).toMatch(/draw the parcel first/);
    takeUp(store, parcelTool);
    for (const at of square) placeCorner(store, at);
    finish(store);
    drawAll(store, hole, inside);
    expect(store.project.value?.parcels[0]?.polygons[0]).toHaveLength(2);
  });
  test("that only measures leaves the project as it was", () => {
    const store = createEmptyStore();
    const before = store.project.value;
    drawAll(store, measureTool, square);
    expect(store.project.value).toBe(before);
    expect(store.drawing.tool.value).toBeNull();
    expect(store.drawing.putAside.value).toBeNull();
  });
});

describe("a typed corner", () => {
  const from = lonLat(-122.458, 38.29);
  test.each([
    ["32.4 m at 118", 32.4, 118],
    ["120 ft 45.5", 36.576, 45.5],
  ])("%s lies that far from the last one, in that direction", (typed, length_m, bearing_deg) => {
    const corner = typedCorner(createEmptyStore(), typed, from);
    if (!corner.ok) throw new Error(corner.reason);
    const way = geodesic(from, corner.at);
    expect(Math.abs(way.length_m - length_m)).toBeLessThan(typed_m);
    expect(Math.abs(way.azimuth_deg - bearing_deg) * (Math.PI / 180) * length_m).toBeLessThan(typed_m);
  });
  test("may be latitude and longitude, also for the first corner", () => {
    expect(typedCorner(createEmptyStore(), "38.2914, -122.4580", null)).toEqual({
      ok: true,
      at: lonLat(-122.458, 38.2914),
    });
  });
  test("that is neither is refused with a reason", () => {
    for (const typed of ["", "north", "12"]) {
      const corner = typedCorner(createEmptyStore(), typed, from);
      expect(corner.ok ? "" : corner.reason).not.toBe("");
    }
  });
  test("by length and bearing needs a corner before it", () => {
    expect(typedCorner(createEmptyStore(), "32.4 m at 118", null).ok).toBe(false);
  });
});

import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { changeSetting } from "../../src/app/commands/change-setting.ts";
import { draft, dropDraft } from "../../src/app/commands/edit.ts";
import { openProject } from "../../src/app/commands/open-project.ts";
import { turnRowsMeanwhile } from "../../src/app/commands/turn-rows.ts";
import { createStore } from "../../src/app/store.ts";
import { followWithRelief } from "../../src/app/terrain/follow-with-relief.ts";
import { reliefBox } from "../../src/app/terrain/relief-box.ts";
import type { ReliefAnswer, ReliefQuestion } from "../../src/app/terrain/relief-messages.ts";
import { shadingPixels } from "../../src/app/terrain/shading-pixels.ts";
import { takeHeightsOut } from "../../src/app/terrain/take-heights.ts";
import { boxAround, coverOf, wantedBox } from "../../src/app/terrain/wanted-box.ts";
import type { Elevation } from "../../src/core/ground/elevation.ts";
import { shade } from "../../src/core/ground/shade.ts";
import { success } from "../../src/core/outcome.ts";
import { lonLat, planePoint } from "../../src/core/plane/coordinate.ts";
import { createFrame } from "../../src/core/plane/frame.ts";
import { withFeature } from "../../src/core/project/edits.ts";

/** A store with a sample that has spot heights, and a worker that answers when it is told to. */
function createFollowed() {
  const store = createStore();
  const file = new URL("../../samples/crooked-strip/project.geojson", import.meta.url);
  openProject(store, readFileSync(file, "utf8"), "crooked-strip.geojson");
  const questions: ReliefQuestion[] = [];
  const shown: ReliefAnswer[] = [];
  let answer: (told: ReliefAnswer) => void = () => undefined;
  let removed = 0;
  const drawing = { show: (relief: ReliefAnswer) => shown.push(relief), remove: () => removed++ };
  const stop = followWithRelief(store, drawing, (tell) => {
    answer = tell;
    return { ask: (question) => questions.push(question), end: () => undefined };
  });
  const answerLast = () => answer({ number: questions.at(-1)?.number ?? 0, contours: new Blob(["{}"]), shading: null });
  return { store, questions, shown, answerLast, stop, removed: () => removed };
}

/** A spot height moved by a metre. */
function raised(store: ReturnType<typeof createStore>, height: number) {
  return draft(store, (project) => {
    const feature = project.document.features.find(({ properties }) => properties?.role === "elevation");
    if (!feature) throw new Error("the sample has spot heights");
    const next = withFeature(project, { ...feature, properties: { ...feature.properties, height } });
    return success(next, next.findings);
  });
}

describe("the relief", () => {
  test("is asked for once, and again only when heights, parcels or units are others", () => {
    const { store, questions, shown, answerLast } = createFollowed();
    expect(questions).toHaveLength(1);
    answerLast();
    expect(shown).toHaveLength(1);
    changeSetting(store, "rows.bearing", 20);
    changeSetting(store, "ground.setback", 2);
    expect(questions).toHaveLength(1);
    store.units.value = "us";
    expect(questions).toHaveLength(2);
    expect(questions[1]?.units).toBe("us");
    answerLast();
    changeSetting(store, "ground.heights", "plane");
    expect(questions[2]?.elevation.kind).toBe("plane");
  });

  test("is not worked out while something is held, but when it is let go", () => {
    const { store, questions, answerLast } = createFollowed();
    answerLast();
    turnRowsMeanwhile(store, 30);
    raised(store, 250);
    raised(store, 251);
    expect(store.plan.value?.project.spotHeights.some(({ height_m }) => height_m === 251)).toBe(true);
    expect(questions).toHaveLength(1);
    dropDraft(store);
    expect(questions).toHaveLength(1);
  });

  test("asks one question at a time, and the newest when it is answered", () => {
    const { store, questions, answerLast } = createFollowed();
    store.units.value = "us";
    changeSetting(store, "ground.heights", "plane");
    expect(questions).toHaveLength(1);
    answerLast();
    expect(questions).toHaveLength(2);
    expect(questions[1]).toMatchObject({ units: "us", elevation: { kind: "plane" } });
  });

  test("asks nothing of flat ground, and takes itself off the map when it is stopped", () => {
    const { store, questions, shown, answerLast, stop, removed } = createFollowed();
    takeHeightsOut(store);
    expect(store.plan.value?.ground?.elevation.kind).toBe("flat");
    stop();
    answerLast();
    expect([questions.length, shown.length, removed()]).toEqual([1, 0, 1]);
  });
});

const frame = createFrame(lonLat(-121.184, 39.1512));
const corner = (x_m: number, y_m: number) => frame.toLonLat(planePoint(x_m, y_m));
const square = [corner(-50, -50), corner(50, -50), corner(50, 50), corner(-50, 50)];
const plane = (east_ratio: number, north_ratio: number): Elevation => ({
  kind: "plane",
  origin_m: 100,
  east_ratio,
  north_ratio,
});

describe("where the relief is drawn", () => {
  test("is the parcels and half their side around them, as far as heights are known", () => {
    const everywhere = reliefBox(plane(0.1, 0), square, frame);
    expect(everywhere?.west_m).toBeCloseTo(-100, 3);
    expect(everywhere?.north_m).toBeCloseTo(100, 3);
    const grid: Elevation = {
      kind: "grid",
      columns: 41,
      rows: 31,
      cell_m: 2,
      height_m: new Float64Array(41 * 31).fill(100),
      // Column 20 and row 15 lie at the origin, columns run east, rows south.
      cells: { column0: 20, columnPerX: 0.5, columnPerY: 0, row0: 15, rowPerX: 0, rowPerY: -0.5 },
    };
    expect(reliefBox(grid, square, frame)).toEqual({ west_m: -40, east_m: 40, south_m: -30, north_m: 30 });
    expect(reliefBox(plane(0.1, 0), [], frame)).toBeNull();
  });
});

describe("shading", () => {
  const box = { west_m: 0, south_m: 0, east_m: 40, north_m: 40 };
  /** Red and opacity in the middle of a box over a plane. */
  const middle = (east_ratio: number, north_ratio: number) => {
    const shaded = shade(plane(east_ratio, north_ratio), box, 2);
    const pixels = shadingPixels(shaded);
    const at = 4 * (Math.floor(shaded.rows / 2) * shaded.columns + Math.floor(shaded.columns / 2));
    return { red: pixels[at], opacity: Number(pixels[at + 3]) };
  };

  test("is ink on ground that turns from the north-west, white on ground that turns to it, nothing on level ground", () => {
    // Light from the north-west half way up: the convention of hill shading (Horn 1981).
    expect(middle(-0.1, 0.1)).toMatchObject({ red: 34 });
    expect(middle(0.1, -0.1)).toMatchObject({ red: 255 });
    expect(middle(-0.1, 0.1).opacity).toBeGreaterThan(40);
    expect(middle(0.1, -0.1).opacity).toBeGreaterThan(40);
    expect(middle(0, 0).opacity).toBe(0);
  });

  test("fades out at the border of the picture", () => {
    const shaded = shade(plane(-0.1, 0.1), box, 2);
    const pixels = shadingPixels(shaded);
    expect(pixels[3]).toBe(0);
    expect(pixels[pixels.length - 1]).toBe(0);
  });
});

describe("the ground that heights are wanted of", () => {
  test("is the parcels' box and a quarter of its longer side around it, 25 m at least", () => {
    const parcels = boxAround(square);
    const wanted = wantedBox(parcels);
    const [west_m, south_m] = frame.toPlane(lonLat(wanted.west, wanted.south));
    expect(west_m).toBeCloseTo(-75, 0);
    expect(south_m).toBeCloseTo(-75, 0);
  });

  test("is covered, in part, or not at all", () => {
    const parcels = boxAround(square);
    const { west, south, east, north } = parcels;
    expect(coverOf({ west: west - 1, south: south - 1, east: east + 1, north: north + 1 }, parcels)).toBe("all");
    expect(coverOf({ west: (west + east) / 2, south, east: east + 1, north }, parcels)).toBe("part");
    expect(coverOf({ west: east + 1, south, east: east + 2, north }, parcels)).toBe("none");
  });

  test("keeps together across longitude 180", () => {
    const box = boxAround([lonLat(179.999, 10), lonLat(-179.999, 10.001)]);
    expect(box.east - box.west).toBeCloseTo(0.002, 9);
  });
});

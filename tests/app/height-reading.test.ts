import type { Feature, Polygon } from "geojson";
import { expect, it } from "vitest";
import type { AboutHeights, HeightAnswer, HeightQuestion } from "../../src/app/terrain/height-messages.ts";
import { HeightReading } from "../../src/app/terrain/height-reading.ts";

const about: AboutHeights = {
  file: {
    columns: 4,
    rows: 3,
    system: "UTM",
    cell_m: [2, 2],
    box: { west: -121.2, south: 39.1, east: -121.1, north: 39.2 },
    heightsAre: "cells",
    noData: null,
    verticalUnit: null,
  },
  cover: "all",
  sentences: [],
};
const ground = { corners: [], units: "metric" } as const;
const grid: Feature<Polygon> = {
  type: "Feature",
  id: "elevation-1",
  properties: {},
  geometry: { type: "Polygon", coordinates: [] },
};
const file = new File([], "hill.tif");

/** A reading whose worker only notes what it is asked. */
function started(against: readonly string[] = []) {
  const asked: HeightQuestion[] = [];
  const taken: unknown[] = [];
  let ended = 0;
  let answer: (answer: HeightAnswer) => void = () => undefined;
  let fail: () => void = () => undefined;
  const reading = new HeightReading(
    (tell, failed) => {
      [answer, fail] = [tell, failed];
      return { ask: (question) => asked.push(question), end: () => ended++ };
    },
    (_, heights) => {
      taken.push(heights);
      return against;
    },
  );
  return {
    reading,
    asked,
    taken,
    ended: () => ended,
    answer: (told: HeightAnswer) => answer(told),
    fail: () => fail(),
  };
}

it("looks at a file, asks, reads with the unit that was chosen and hands the heights on", () => {
  const { reading, asked, taken, answer, ended } = started();
  reading.look(file, ground);
  expect(reading.state.value.kind).toBe("looking");
  answer({ number: asked[0]?.number ?? 0, kind: "about", about });
  expect(reading.state.value).toMatchObject({ kind: "asked", about });
  reading.read(file, ground, "us-ft");
  expect(asked[1]).toMatchObject({ unit: "us-ft", system: null });
  answer({ number: asked[1]?.number ?? 0, kind: "progress", share_ratio: 0.4 });
  expect(reading.state.value).toMatchObject({ kind: "reading", share_ratio: 0.4 });
  answer({ number: asked[1]?.number ?? 0, kind: "taken", grid, sentences: ["Some cells are empty."] });
  expect(taken).toEqual([grid]);
  expect(reading.state.value).toMatchObject({ kind: "taken", sentences: ["Some cells are empty."] });
  expect(ended()).toBe(1);
});

it("reads with the coordinate system that was typed when it looked again", () => {
  const { reading, asked, answer } = started();
  reading.look(file, ground);
  answer({ number: asked[0]?.number ?? 0, kind: "about", about: { ...about, cover: null } });
  reading.look(file, ground, "EPSG:32610");
  expect(asked[1]).toMatchObject({ system: "EPSG:32610", unit: null });
  answer({ number: asked[1]?.number ?? 0, kind: "about", about });
  expect(reading.state.value).toMatchObject({ kind: "asked", system: "EPSG:32610" });
  reading.read(file, ground, "m");
  expect(asked[2]).toMatchObject({ system: "EPSG:32610", unit: "m" });
});

it("ends its worker when it is stopped, and takes nothing that comes too late", () => {
  const { reading, asked, taken, answer, ended } = started();
  reading.read(file, ground, "m");
  reading.stop();
  expect(ended()).toBe(1);
  expect(reading.state.value.kind).toBe("none");
  answer({ number: asked[0]?.number ?? 0, kind: "taken", grid, sentences: [] });
  expect(taken).toEqual([]);
  expect(reading.state.value.kind).toBe("none");
});

it("says why when the worker breaks, or when the project does not take the heights", () => {
  const broken = started();
  broken.reading.look(file, ground);
  broken.fail();
  expect(broken.reading.state.value).toMatchObject({ kind: "refused" });
  const refused = started(["Another tab writes this project."]);
  refused.reading.read(file, ground, "m");
  refused.answer({ number: refused.asked[0]?.number ?? 0, kind: "taken", grid, sentences: [] });
  expect(refused.reading.state.value).toMatchObject({
    kind: "refused",
    sentences: ["Another tab writes this project."],
  });
});

it("takes a track with heights without asking, and says so where it has none", async () => {
  const { reading, asked, taken } = started();
  const points = '<trkpt lat="42" lon="-76"><ele>1</ele></trkpt><trkpt lat="43" lon="-76"><ele>2</ele></trkpt>';
  await reading.takeTrack(new File([`<gpx><trkseg>${points}</trkseg></gpx>`], "walk.gpx"), "metric");
  expect(reading.state.value.kind).toBe("taken");
  expect(taken).toMatchObject([
    {
      geometry: {
        coordinates: [
          [
            [-76, 42, 1],
            [-76, 43, 2],
          ],
        ],
      },
    },
  ]);
  await reading.takeTrack(new File(["<gpx/>"], "none.gpx"), "metric");
  expect(reading.state.value).toMatchObject({
    kind: "refused",
    sentences: [expect.stringContaining("no track with heights")],
  });
  expect(asked).toEqual([]);
});

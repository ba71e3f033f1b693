import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { cutArea, cutLine } from "../../../src/core/exchange/antimeridian.ts";
import { createBounds } from "../../../src/core/exchange/bounds.ts";
import { featureGeometry } from "../../../src/core/exchange/feature-geometry.ts";
import type { Place } from "../../../src/core/exchange/layers/layer.ts";
import { lonLat } from "../../../src/core/plane/coordinate.ts";
import { placeOf } from "../../support/create-hand-over-job.ts";

/* RFC 7946 section 3.1.9: what crosses the antimeridian is cut in two, so that neither part crosses it. */

type Corner = readonly [lon: number, lat: number];

const ring = (...corners: readonly Corner[]): readonly Place[] => corners.map(([lon, lat]) => placeOf(lon, lat));
const bare = (polygons: readonly (readonly (readonly Place[])[])[]) =>
  polygons.map((rings) => rings.map((each) => each.map(({ at: [lon, lat] }) => [lon, lat])));

describe("a line", () => {
  test("that does not cross it is the same line", () => {
    const places = ring([179, -17], [180, -17]);
    expect(cutLine(places)).toEqual([places]);
  });

  test("that crosses it east or west becomes two, with the height between", () => {
    expect(cutLine([placeOf(179.75, -17, 10), placeOf(-179.75, -16, 20)])).toEqual([
      [placeOf(179.75, -17, 10), placeOf(180, -16.5, 15)],
      [placeOf(-180, -16.5, 15), placeOf(-179.75, -16, 20)],
    ]);
    expect(cutLine(ring([-179.5, 0], [179.5, 0])).map((line) => line.map(({ at }) => at[0]))).toEqual([
      [-179.5, -180],
      [180, 179.5],
    ]);
  });
});

describe("an area", () => {
  test("that does not cross it is the same area, with its holes", () => {
    const area = [[ring([10, 45], [11, 45], [11, 46]), ring([10.5, 45.1], [10.6, 45.2], [10.6, 45.1])]];
    expect(cutArea(area)).toEqual(area);
  });

  test("that crosses it becomes two, the western first, both counter-clockwise", () => {
    expect(bare(cutArea([[ring([179, -17], [-179, -17], [-179, -16], [179, -16])]]))).toEqual([
      [
        [
          [180, -16],
          [179, -16],
          [179, -17],
          [180, -17],
        ],
      ],
      [
        [
          [-180, -17],
          [-179, -17],
          [-179, -16],
          [-180, -16],
        ],
      ],
    ]);
  });

  test("a bay at the antimeridian gives two parts on its side", () => {
    const comb = ring([179, 0], [-179, 0], [-179, 1], [179.5, 1], [179.5, 2], [-179, 2], [-179, 3], [179, 3]);
    const parts = cutArea([[comb]]);
    expect(parts).toHaveLength(3);
    expect(areaOf(parts)).toBeCloseTo(areaOf([[comb]]), 9);
  });

  test("a hole that crosses it becomes part of the outlines, one beside it stays a hole of its part", () => {
    const outer = ring([178, 0], [-178, 0], [-178, 4], [178, 4]);
    const across = ring([179.5, 1], [179.5, 2], [-179.5, 2], [-179.5, 1]);
    const east = ring([-179, 3], [-179, 3.5], [-178.5, 3.5], [-178.5, 3]);
    const parts = cutArea([[outer, across, east]]);
    expect(parts.map((rings) => rings.length)).toEqual([1, 2]);
    expect(areaOf(parts)).toBeCloseTo(16 - 1 - 0.25, 9);
  });

  test("areas stay what they are however they lie across it: parts on one side each, their sum the same", () => {
    const star = fc.tuple(
      fc.array(fc.double({ min: 0.05, max: 0.5, noNaN: true }), { minLength: 3, maxLength: 12 }),
      fc.double({ min: -0.6, max: 0.6, noNaN: true }),
    );
    fc.assert(
      fc.property(star, ([reaches, shift]) => {
        const corners = reaches.map((reach, i): Corner => {
          const turn = (2 * Math.PI * i) / reaches.length;
          const lon = 180 + shift + reach * Math.cos(turn);
          return [lon > 180 ? lon - 360 : lon, -17 + reach * Math.sin(turn)];
        });
        const area = [[ring(...corners)]];
        const parts = cutArea(area);
        for (const rings of parts) {
          const lons = rings.flatMap((each) => each.map(({ at }) => at[0]));
          expect(Math.max(...lons) - Math.min(...lons)).toBeLessThan(2);
        }
        expect(areaOf(parts)).toBeCloseTo(areaOf(area), 9);
      }),
      { seed: 7946, numRuns: 500 },
    );
  });
});

test("the box around what crosses it has its west beyond its east (RFC 7946 section 5.2)", () => {
  const bounds = createBounds();
  expect(bounds.box()).toBeNull();
  bounds.add(featureGeometry({ shape: "line", places: ring([177, -20], [-178, -16]) }));
  expect(bounds.box()).toEqual([177, -20, -178, -16]);
});

test("the box of what lies on both sides of the meridian of Greenwich is an ordinary one", () => {
  const bounds = createBounds();
  bounds.add({
    type: "GeometryCollection",
    geometries: [
      { type: "Point", coordinates: [-0.5, 51, 3] },
      { type: "Point", coordinates: [0.5, 52] },
    ],
  });
  expect(bounds.box()).toEqual([-0.5, 51, 3, 0.5, 52, 3]);
});

/** In square degrees, holes taken off; what lies beyond the antimeridian is put behind it. */
function areaOf(polygons: readonly (readonly (readonly Place[])[])[]): number {
  const isAcross = (each: readonly Place[]) => each.some(({ at }) => at[0] > 90) && each.some(({ at }) => at[0] < -90);
  return polygons
    .flat()
    .map((each) => {
      const places = isAcross(each)
        ? each.map(({ at }) => lonLat(at[0] < 0 ? at[0] + 360 : at[0], at[1]))
        : each.map(({ at }) => at);
      return places.reduce((sum, [bx, by], i) => {
        const [ax, ay] = places.at(i - 1) ?? [bx, by];
        return sum + (ax * by - bx * ay) / 2;
      }, 0);
    })
    .reduce((sum, each) => sum + each, 0);
}

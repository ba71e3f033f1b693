import { describe, expect, it, test } from "vitest";
import { withCornerInserted, withCornerMoved, withoutCorner } from "../../../src/core/drawing/corners.ts";
import { drawnThing, drawnThings } from "../../../src/core/drawing/drawn.ts";
import { withoutThing } from "../../../src/core/drawing/things.ts";
import { lonLat } from "../../../src/core/plane/coordinate.ts";
import type { Json, Project } from "../../../src/core/project/project.ts";
import { serializeProject } from "../../../src/core/project/serialize.ts";
import {
  area,
  drawnAt,
  drawnProject,
  feature,
  fieldCorners,
  fieldProject,
  line,
  refused,
  ring,
  spot,
  statedSetbacks,
  taken,
} from "../../support/drawn-files.ts";
import { codes, projectIn } from "../../support/project-files.ts";

const home = (corner: number, path = 0) => ({ key: "home", path, corner });
const side = (edge: number, path = 0) => ({ key: "home", path, edge });
const cornersOf = (project: Project, key = "home", path = 0) => drawnThing(project, key)?.paths[path]?.corners;

describe("a corner that is moved", () => {
  const fence = line("fence", { role: "edge", setback: 5 }, [
    [60, 0],
    [60, 120],
  ]);

  it("takes the ends of edge features along, and nothing else", () => {
    const oak = spot("oak", { role: "obstacle" }, [30, 30]);
    const before = fieldProject([fence, oak]);
    const after = taken(withCornerMoved(before, home(2), drawnAt([65, 125])));
    expect(cornersOf(after)?.[2]).toEqual(drawnAt([65, 125]));
    expect(cornersOf(after, "fence")).toEqual([drawnAt([60, 0]), drawnAt([65, 125])]);
    expect(statedSetbacks(after, "home", 0, 4)).toEqual([null, 5, null, null]);
    expect(after.document.features[2]).toBe(before.document.features[2]);
    expect(after.keepOuts).toBe(before.keepOuts);
  });

  it("closes the ring again when it is the first one", () => {
    const after = taken(withCornerMoved(fieldProject(), home(0), drawnAt([-5, -5])));
    const geometry = JSON.stringify(after.document.features[0]?.geometry);
    const [lon, lat] = drawnAt([-5, -5]);
    expect(geometry.split(JSON.stringify([lon, lat]))).toHaveLength(3);
    expect(cornersOf(after)).toHaveLength(4);
  });

  it("keeps its height, that of the closing position, and every number that was not touched", () => {
    const text = `{"type":"FeatureCollection","odd":[1e2],"features":[{"type":"Feature","id":"home","zone":"x",
      "properties":{"role":"parcel","soil":{"clay":0.30}},"geometry":{"type":"Polygon","coordinates":[[
      [-76.90,42.60,211.5],[-76.8988,42.60,212],[-76.8988,42.6008,213],[-76.90,42.6008,214,7],[-76.90,42.60,211.5]]]}}]}`;
    const after = taken(withCornerMoved(projectIn(text), home(0), lonLat(-76.9001, 42.5999)));
    expect(after.document.features[0]).toEqual({
      type: "Feature",
      id: "home",
      zone: "x",
      properties: { role: "parcel", soil: { clay: 0.3 } },
      geometry: {
        type: "Polygon",
        coordinates: [
          [
            [-76.9001, 42.5999, 211.5],
            [-76.8988, 42.6, 212],
            [-76.8988, 42.6008, 213],
            [-76.9, 42.6008, 214, 7],
            [-76.9001, 42.5999, 211.5],
          ],
        ],
      },
    });
    expect(after.document.odd).toEqual([100]);
  });

  it("takes the bounding boxes of its feature and of the file along, where they state one", () => {
    const corners = "[[[-76.9,42.6],[-76.8988,42.6],[-76.8988,42.6008],[-76.9,42.6]]]";
    const text = (
      box: string,
    ) => `{"type":"FeatureCollection","bbox":${box},"features":[{"type":"Feature","id":"home","bbox":${box},
      "properties":{"role":"parcel"},"geometry":{"type":"Polygon","coordinates":${corners}}},
      {"type":"Feature","id":"odd","bbox":[1],"properties":{"role":"mark"},"geometry":{"type":"Point","coordinates":["x",2]}},
      {"type":"Feature","id":"pin","properties":{"role":"mark"},"geometry":{"type":"Point","coordinates":[-76.91,42.6]}}]}`;
    const moved = (box: string) =>
      taken(withCornerMoved(projectIn(text(box)), home(2), lonLat(-76.8988, 42.601))).document;
    const flat = moved("[-76.9,42.6,-76.8988,42.6008]");
    expect(flat.features[0]?.bbox).toEqual([-76.9, 42.6, -76.8988, 42.601]);
    // A place that is none hides how far the file reaches, so its box stays.
    expect(flat.bbox).toEqual([-76.9, 42.6, -76.8988, 42.6008]);
    const whole = taken(withoutThing(projectIn(text("[-76.9,42.6,1,-76.8988,42.6008,9]")), "odd"));
    expect(whole.document.bbox).toEqual([-76.91, 42.6, 1, -76.8988, 42.6008, 9]);
    expect(whole.document.features[0]?.bbox).toEqual([-76.9, 42.6, 1, -76.8988, 42.6008, 9]);
    expect(moved('"none"').bbox).toBe("none");
  });

  it("has nine decimals and a longitude within 180 degrees", () => {
    const after = taken(withCornerMoved(fieldProject(), home(1), lonLat(283.1000000001234 + 0.0004, 42.60000000049)));
    expect(cornersOf(after)?.[1]).toEqual([-76.8996, 42.6]);
  });

  it("may make the outline cross itself: the project says so, and the next edit mends it", () => {
    const crossing = taken(withCornerMoved(fieldProject([fence]), home(2), drawnAt([-40, 60])));
    expect(codes(crossing.findings)).toContain("project/self-crossing");
    const mended = taken(withCornerMoved(crossing, home(2), drawnAt([60, 120])));
    expect(codes(mended.findings)).not.toContain("project/self-crossing");
    expect(statedSetbacks(mended, "home", 0, 4)).toEqual([null, 5, null, null]);
  });

  it("leaves the edge features of a neighbour that shares the corner alone", () => {
    const next = area("next", { role: "parcel" }, [
      [60, 0],
      [120, 0],
      [120, 120],
    ]);
    const road = line("road", { role: "edge", setback: 9 }, [
      [60, 0],
      [120, 0],
    ]);
    const after = taken(withCornerMoved(fieldProject([next, road]), home(1), drawnAt([55, -5])));
    expect(cornersOf(after, "road")).toEqual([drawnAt([60, 0]), drawnAt([120, 0])]);
    expect(statedSetbacks(after, "next", 0, 3)).toEqual([9, null, null]);
  });

  it("takes along an edge feature that is up to 10 cm beside it", () => {
    const near = line("near", { role: "edge", setback: 7 }, [
      [60.05, 0.02],
      [59.98, 120.04],
    ]);
    const before = fieldProject([near]);
    expect(statedSetbacks(before, "home", 0, 4)).toEqual([null, 7, null, null]);
    const after = taken(withCornerMoved(before, home(1), drawnAt([70, 0])));
    expect(cornersOf(after, "near")).toEqual([drawnAt([70, 0]), drawnAt([59.98, 120.04])]);
  });

  it("takes along what stands on it of an edge that ends within a side", () => {
    const half = line("half", { role: "edge", setback: 7 }, [
      [60, 0],
      [60, 50],
    ]);
    const after = taken(withCornerMoved(fieldProject([half]), home(1), drawnAt([62, 0])));
    expect(cornersOf(after, "half")).toEqual([drawnAt([62, 0]), drawnAt([60, 50])]);
  });

  it("is found in every kind of geometry", () => {
    const pins = feature(
      "pins",
      { role: "mark" },
      {
        type: "MultiPoint",
        coordinates: [
          [-76.9, 42.6],
          [-76.8999, 42.6],
        ],
      },
    );
    const two = feature(
      "two",
      { role: "obstacle" },
      {
        type: "GeometryCollection",
        geometries: [
          { type: "Point", coordinates: [-76.8998, 42.6001] },
          {
            type: "MultiLineString",
            coordinates: [
              [
                [-76.8997, 42.6001],
                [-76.8996, 42.6001],
              ],
              [
                [-76.8997, 42.6002],
                [-76.8996, 42.6002],
              ],
            ],
          },
          {
            type: "MultiPolygon",
            coordinates: [
              [
                ring([
                  [30, 60],
                  [40, 60],
                  [35, 70],
                ]),
              ],
            ],
          },
        ],
      },
    );
    let project = fieldProject([pins, two]);
    expect(drawnThings(project).map(({ paths }) => paths.length)).toEqual([1, 2, 4]);
    const to = lonLat(-76.8995, 42.6003);
    for (const [key, path, corner] of [
      ["pins", 1, 0],
      ["two", 0, 0],
      ["two", 2, 1],
      ["two", 3, 2],
    ] as const) {
      project = taken(withCornerMoved(project, { key, path, corner }, to));
      expect(cornersOf(project, key, path)?.[corner]).toEqual(to);
    }
    expect(cornersOf(project, "two", 1)).toEqual([
      [-76.8997, 42.6001],
      [-76.8996, 42.6001],
    ]);
  });

  test.each([
    [{ key: "away", path: 0, corner: 0 }],
    [{ key: "home", path: 1, corner: 0 }],
    [{ key: "home", path: 0, corner: 4 }],
    [{ key: "home", path: 0, corner: -1 }],
  ])("that is not there is refused: %j", (ref) => {
    expect(refused(withCornerMoved(fieldProject(), ref, drawnAt([1, 1])))).toEqual(["drawing/not-there"]);
    expect(refused(withoutCorner(fieldProject(), ref))).toEqual(["drawing/not-there"]);
  });

  it("to no place on the globe is refused", () => {
    for (const to of [lonLat(Number.NaN, 0), lonLat(0, 91), lonLat(Number.POSITIVE_INFINITY, 0)]) {
      expect(refused(withCornerMoved(fieldProject(), home(0), to))).toEqual(["drawing/not-a-place"]);
      expect(refused(withCornerInserted(fieldProject(), side(0), to))).toEqual(["drawing/not-a-place"]);
    }
  });
});

describe("a corner that is put in", () => {
  it("goes into the edge feature along that side too, whichever way it is drawn", () => {
    const drawn = [
      [
        [60, 0],
        [60, 120],
      ],
      [
        [60, 120],
        [60, 0],
      ],
    ] as const;
    for (const points of drawn) {
      const before = fieldProject([line("fence", { role: "edge", setback: 5 }, points)]);
      const after = taken(withCornerInserted(before, side(1), drawnAt([66, 60])));
      expect(cornersOf(after)?.[2]).toEqual(drawnAt([66, 60]));
      expect(cornersOf(after, "fence")).toEqual([drawnAt(points[0]), drawnAt([66, 60]), drawnAt(points[1])]);
      expect(statedSetbacks(after, "home", 0, 5)).toEqual([null, 5, 5, null, null]);
    }
  });

  it("on the closing side comes last", () => {
    const after = taken(withCornerInserted(fieldProject(), side(3), drawnAt([-3, 60])));
    expect(cornersOf(after)).toEqual([...fieldCorners, [-3, 60] as const].map(drawnAt));
  });

  it("goes into an edge feature that skips the corners of a straight side", () => {
    const parcel = area("home", { role: "parcel" }, [
      [0, 0],
      [30, 0],
      [60, 0],
      [60, 120],
      [0, 120],
    ]);
    const road = line("road", { role: "edge", setback: 6 }, [
      [0, 0],
      [60, 0],
    ]);
    const after = taken(withCornerInserted(drawnProject([parcel, road]), side(1), drawnAt([45, -8])));
    expect(statedSetbacks(after, "home", 0, 6)).toEqual([6, 6, 6, null, null, null]);
    expect(cornersOf(after, "road")).toEqual(
      [
        [0, 0],
        [30, 0],
        [45, -8],
        [60, 0],
      ].map(([x = 0, y = 0]) => drawnAt([x, y])),
    );
  });

  it("may be put into a line, but not beyond its ends", () => {
    const project = fieldProject([
      line("brook", { role: "no-plant" }, [
        [0, 60],
        [60, 60],
      ]),
    ]);
    const after = taken(withCornerInserted(project, { key: "brook", path: 0, edge: 0 }, drawnAt([30, 66])));
    expect(cornersOf(after, "brook")).toHaveLength(3);
    expect(refused(withCornerInserted(project, { key: "brook", path: 0, edge: 1 }, drawnAt([70, 60])))).toEqual([
      "drawing/not-there",
    ]);
  });
});

describe("a corner that is taken out", () => {
  const pentagon = area("home", { role: "parcel" }, [
    [0, 0],
    [60, 0],
    [80, 60],
    [60, 120],
    [0, 120],
  ]);
  const edge = (id: string, says: Json, ...points: readonly (readonly [number, number])[]): Json =>
    line(id, { role: "edge", ...(typeof says === "object" ? says : {}) }, points);

  it("is taken out of an edge feature that passes it", () => {
    const before = drawnProject([pentagon, edge("road", { setback: 6 }, [60, 0], [80, 60], [60, 120])]);
    const after = taken(withoutCorner(before, home(2)));
    expect(cornersOf(after, "road")).toEqual([drawnAt([60, 0]), drawnAt([60, 120])]);
    expect(statedSetbacks(after, "home", 0, 4)).toEqual([null, 6, null, null]);
  });

  it("lets an edge feature that ended there run on, so that the side keeps its setback", () => {
    const low = taken(
      withoutCorner(drawnProject([pentagon, edge("road", { setback: 6 }, [60, 0], [80, 60])]), home(2)),
    );
    expect(cornersOf(low, "road")).toEqual([drawnAt([60, 0]), drawnAt([60, 120])]);
    const high = taken(
      withoutCorner(drawnProject([pentagon, edge("road", { setback: 6 }, [60, 120], [80, 60])]), home(2)),
    );
    expect(cornersOf(high, "road")).toEqual([drawnAt([60, 120]), drawnAt([60, 0])]);
  });

  it("leaves the larger of two setbacks", () => {
    for (const [low, high] of [
      [6, 9],
      [9, 6],
    ] as const) {
      const before = drawnProject([
        pentagon,
        edge("low", { setback: low }, [60, 0], [80, 60]),
        edge("high", { setback: high }, [0, 120], [60, 120], [80, 60]),
      ]);
      const after = taken(withoutCorner(before, home(2)));
      expect(statedSetbacks(after, "home", 0, 4)).toEqual([null, 9, high, null]);
      expect(drawnThing(after, "low") === null).toBe(low < high);
    }
  });

  it("joins two edge features of one setback, unless one of them says more", () => {
    const two = (says: Json) =>
      drawnProject([
        pentagon,
        edge("low", { setback: 6 }, [60, 0], [80, 60]),
        edge("high", { setback: 6, ...(typeof says === "object" ? says : {}) }, [60, 120], [80, 60]),
      ]);
    const joined = taken(withoutCorner(two({}), home(2)));
    expect(joined.edges).toHaveLength(1);
    const named = taken(withoutCorner(two({ name: "hedge" }), home(2)));
    expect(named.edges.map(({ key, name }) => [key, name])).toEqual([["high", "hedge"]]);
    expect(statedSetbacks(named, "home", 0, 4)).toEqual([null, 6, null, null]);
  });

  it("at the seam of an edge feature all around leaves it all around", () => {
    const around = edge("hedge", { setback: 4 }, [60, 0], [80, 60], [60, 120], [0, 120], [0, 0], [60, 0]);
    const after = taken(withoutCorner(drawnProject([pentagon, around]), home(1)));
    expect(statedSetbacks(after, "home", 0, 4)).toEqual([4, 4, 4, 4]);
    const other = taken(withoutCorner(drawnProject([pentagon, around]), home(4)));
    expect(statedSetbacks(other, "home", 0, 4)).toEqual([4, 4, 4, 4]);
  });

  it("follows in a hole as in the outline", () => {
    const holed = area("home", { role: "parcel" }, fieldCorners, [
      [20, 20],
      [20, 40],
      [30, 50],
      [40, 40],
      [40, 20],
    ]);
    const bank = line("bank", { role: "edge", setback: 2 }, [
      [20, 40],
      [30, 50],
    ]);
    const before = drawnProject([holed, bank]);
    expect(statedSetbacks(before, "home", 1, 5)).toEqual([null, 2, null, null, null]);
    const after = taken(withoutCorner(before, home(2, 1)));
    expect(statedSetbacks(after, "home", 1, 4)).toEqual([null, 2, null, null]);
  });

  it("is refused when too few would be left", () => {
    const triangle = drawnProject([
      area("home", { role: "parcel" }, [
        [0, 0],
        [60, 0],
        [60, 120],
      ]),
      line("brook", { role: "no-plant" }, [
        [0, 60],
        [60, 60],
      ]),
      spot("oak", { role: "obstacle" }, [10, 10]),
    ]);
    for (const key of ["home", "brook", "oak"]) {
      expect(refused(withoutCorner(triangle, { key, path: 0, corner: 0 }))).toEqual(["drawing/too-few-corners"]);
    }
  });
});

describe("the frame", () => {
  it("is written down by the first edit, where it was before, so that nothing turns", () => {
    const before = fieldProject();
    const after = taken(withCornerMoved(before, home(2), drawnAt([160, 120])));
    const middle = drawnAt([30, 60]);
    expect(after.frameOrigin?.[0]).toBeCloseTo(middle[0], 5);
    expect(after.frameOrigin?.[1]).toBeCloseTo(middle[1], 5);
    expect(after.frameOrigin?.map((each) => Number(each.toFixed(6)))).toEqual([...(after.frameOrigin ?? [])]);
    const again = taken(withCornerMoved(after, home(2), drawnAt([260, 120])));
    expect(again.frameOrigin).toBe(after.frameOrigin);
    expect(projectIn(serializeProject(again)).frameOrigin).toEqual(after.frameOrigin);
  });

  it("that is stated stays, and settings that cannot be written to do not hinder the edit", () => {
    const stated = fieldProject([], { version: 1, frame: { origin: [-76.9, 42.6], note: "ours" } });
    expect(taken(withCornerMoved(stated, home(2), drawnAt([65, 125]))).document.tautrow).toBe(stated.document.tautrow);
    for (const settings of [[1], { version: 99 }, { frame: 7 }]) {
      const odd = fieldProject([], settings);
      const after = taken(withCornerMoved(odd, home(2), drawnAt([65, 125])));
      expect(after.document.tautrow).toEqual(settings);
      expect(cornersOf(after)?.[2]).toEqual(drawnAt([65, 125]));
    }
  });
});

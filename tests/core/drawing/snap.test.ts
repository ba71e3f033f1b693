import { describe, expect, it } from "vitest";
import { drawnThings } from "../../../src/core/drawing/drawn.ts";
import { courseBetween, placeAt } from "../../../src/core/drawing/place.ts";
import { snapPlace } from "../../../src/core/drawing/snap.ts";
import { testFrame } from "../../support/create-project.ts";
import { area, drawnAt, drawnProject, fieldCorners, line, spot } from "../../support/drawn-files.ts";

const things = drawnThings(
  drawnProject([
    area("home", { role: "parcel", name: "North field" }, fieldCorners),
    spot("oak", { role: "obstacle" }, [30, 30]),
    line("brook", { role: "no-plant", name: "brook" }, [
      [0, 200],
      [80, 240],
    ]),
  ]),
);
const frame = testFrame;
const reach_m = 2;
const at = (x: number, y: number) => drawnAt([x, y]);

/** Metres: below what nine decimals of a degree can say. */
const tolerance_m = 1e-3;
const apart_m = (one: Parameters<typeof courseBetween>[1], other: Parameters<typeof courseBetween>[1]) =>
  courseBetween(frame, one, other).length_m;
const turn_deg = (one: number, other: number) => Math.abs(((one - other + 540) % 360) - 180);

describe("a corner that is set", () => {
  it("near a corner goes onto it, to the last decimal", () => {
    expect(snapPlace({ frame, things, at: at(1, 1), reach_m })).toEqual({
      at: at(0, 0),
      kind: "corner",
      guides: [],
      words: "corner of North field",
    });
    expect(snapPlace({ frame, things, at: at(30.5, 30), reach_m })).toMatchObject({
      at: at(30, 30),
      words: "corner of the obstacle",
    });
  });

  it("near an edge goes onto it, unless a corner is near as well", () => {
    const snap = snapPlace({ frame, things, at: at(61, 50), reach_m });
    expect(snap.kind).toBe("edge");
    expect(snap.words).toBe("along the edge of North field");
    expect(apart_m(snap.at, at(60, 50))).toBeLessThan(tolerance_m);
    expect(snap.guides).toHaveLength(1);
    expect(snapPlace({ frame, things, at: at(61, 119.5), reach_m }).kind).toBe("corner");
    expect(snapPlace({ frame, things, at: at(41, 221), reach_m }).words).toBe("along brook");
  });

  it("where nothing is near stays where it is", () => {
    expect(snapPlace({ frame, things, at: at(30, 70), reach_m })).toEqual({
      at: at(30, 70),
      kind: "free",
      guides: [],
      words: "",
    });
  });

  it("goes where the new side is square to the last one", () => {
    const snap = snapPlace({
      frame,
      things: [],
      at: at(301, 140),
      reach_m,
      previous: at(300, 100),
      beforePrevious: at(200, 100),
    });
    expect(snap).toMatchObject({ kind: "right-angle", words: "right angle to the last side" });
    expect(apart_m(snap.at, at(300, 140))).toBeLessThan(tolerance_m);
  });

  it("that closes the ring goes where it is square at both ends", () => {
    const corners = { previous: at(300, 150), beforePrevious: at(300, 100), first: at(250, 100) };
    const snap = snapPlace({ frame, things: [], at: at(251, 151), reach_m, ...corners });
    expect(snap).toMatchObject({ kind: "right-angle", words: "right angle at both ends" });
    expect(apart_m(snap.at, at(250, 150))).toBeLessThan(tolerance_m);
    expect(snap.guides).toHaveLength(2);
  });

  it("goes where the new side is parallel to an edge near by, or square to it", () => {
    const parallel = snapPlace({ frame, things, at: at(71, 100), reach_m, previous: at(70, 20) });
    expect(parallel).toMatchObject({ kind: "parallel", words: "parallel to the edge of North field" });
    expect(apart_m(parallel.at, at(70, 100))).toBeLessThan(tolerance_m);
    const previous = at(100, 200);
    const along = courseBetween(frame, at(0, 200), at(80, 240)).bearing_deg;
    const near = placeAt(frame, previous, { length_m: 35, bearing_deg: along - 91 });
    const square = snapPlace({ frame, things, at: near, reach_m, previous });
    expect(square).toMatchObject({ kind: "right-angle", words: "right angle to brook" });
    expect(turn_deg(courseBetween(frame, previous, square.at).bearing_deg, along - 90)).toBeLessThan(0.01);
  });

  it("on an edge goes where the new side meets it squarely, or where it is square to the last side", () => {
    const meets = snapPlace({ frame, things, at: at(59.5, 51), reach_m, previous: at(20, 50) });
    expect(meets).toMatchObject({ kind: "right-angle", words: "right angle to the edge of North field" });
    expect(apart_m(meets.at, at(60, 50))).toBeLessThan(tolerance_m);
    const last = { previous: at(20, 50), beforePrevious: at(10, 70) };
    const crosses = snapPlace({ frame, things, at: at(60.5, 71), reach_m, ...last });
    expect(crosses).toMatchObject({
      kind: "edge",
      words: "along the edge of North field, at a right angle to the last side",
    });
    expect(apart_m(crosses.at, at(60, 70))).toBeLessThan(tolerance_m);
  });

  it("does not stick to itself while it is moved", () => {
    const except = { key: "home", path: 0, corner: 2 };
    expect(snapPlace({ frame, things, at: at(60.5, 119.5), reach_m, except }).kind).toBe("free");
    expect(snapPlace({ frame, things, at: at(60.5, 60), reach_m, except }).kind).toBe("free");
    expect(snapPlace({ frame, things, at: at(59, 1), reach_m, except }).kind).toBe("corner");
  });

  it("is told the name of the edge it lies along", () => {
    const named = drawnThings(
      drawnProject([
        line("fence", { role: "edge", name: "east fence" }, [
          [60, 0],
          [60, 120],
        ]),
        area("home", { role: "parcel" }, fieldCorners),
      ]),
    );
    for (const list of [named, [...named].reverse()]) {
      expect(snapPlace({ frame, things: list, at: at(61, 50), reach_m }).words).toBe("along the east fence");
    }
  });
});

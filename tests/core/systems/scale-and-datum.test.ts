import { describe, expect, it, test } from "vitest";
import { lonLat } from "../../../src/core/plane/coordinate.ts";
import { createFrame } from "../../../src/core/plane/frame.ts";
import { lonLatSystem, statedSystem } from "../../../src/core/systems/coordinate-system.ts";
import { datumNote } from "../../../src/core/systems/datum-note.ts";
import { localSystem } from "../../../src/core/systems/local-system.ts";
import { scaleAt } from "../../../src/core/systems/scale-at.ts";
import { text } from "../../../src/core/units.ts";
import { codes } from "../../support/project-files.ts";
import { createSystem } from "./create-systems.ts";

describe("how a plane differs from the ground", () => {
  // Calculation handbook, section 8.3: of 100 m on the ellipsoid beginning there; ours is in the place itself, 50 m before.
  it.each([
    [-75, 0.9996],
    [-76.9, 0.99989872],
    [-78.9, 1.00085933],
  ])("UTM 18 at 42.6 north, %d: scale %d", (lon, scale) => {
    expect(Math.abs((scaleAt(createSystem(32618), lon, 42.6)?.scale_ratio ?? 0) - scale)).toBeLessThan(5e-7);
  });

  // Handbook, section 8.3: grid bearing = true bearing - convergence.
  it.each([
    [-76.9, -1.28632],
    [-78.9, -2.64203],
  ])("UTM 18 at 42.6 north, %d: convergence %d degrees", (lon, convergence) => {
    expect(Math.abs((scaleAt(createSystem(32618), lon, 42.6)?.convergence_deg ?? 0) - convergence)).toBeLessThan(1e-4);
  });

  test("feet and metres of one zone have one scale, web maps stretch by 1 over the cosine (handbook, 8.3), degrees have none", () => {
    const scales = [2226, 26942].map((code) => scaleAt(createSystem(code), -122.3, 38.3)?.scale_ratio ?? NaN);
    expect(Math.abs((scales[0] ?? NaN) - (scales[1] ?? NaN))).toBeLessThan(1e-10);
    // 1.35852 on the sphere; of the ellipsoid the mean of north and east differs by its flatness.
    expect(scaleAt(createSystem(3857), -76.9, 42.6)?.scale_ratio).toBeCloseTo(1.3585, 2);
    expect(scaleAt(lonLatSystem, -76.9, 42.6)).toBeNull();
  });

  test("a plane with its axes to the south and west is turned like its neighbours, not upside down", () => {
    const convergence = scaleAt(createSystem(2048), 19.5, -34)?.convergence_deg ?? NaN;
    // Snyder 1987, spherical form: half a degree east of the meridian at 34 south.
    expect(convergence).toBeCloseTo(
      (Math.atan(Math.tan((0.5 * Math.PI) / 180) * Math.sin((-34 * Math.PI) / 180)) * 180) / Math.PI,
      4,
    );
  });

  test("the plane of the project is true to scale at its origin", () => {
    const local = localSystem(createFrame(lonLat(-122, 38)), "us-ft");
    expect(scaleAt(local, -122, 38)?.scale_ratio).toBeCloseTo(1, 9);
  });
});

describe("what is said of a datum", () => {
  test("nothing of WGS 84 and of the project's own plane", () => {
    expect(datumNote(lonLatSystem)).toEqual([]);
    expect(datumNote(createSystem(32610))).toEqual([]);
    expect(datumNote(createSystem(3857))).toEqual([]);
    expect(datumNote(localSystem(createFrame(lonLat(-122, 38)), "m"))).toEqual([]);
  });

  test("NAD83 is 1 to 2 m away, other continents up to 2 m (handbook, 8.3), in whole metres and feet", () => {
    const said = (code: number, units: "metric" | "us") => text(datumNote(createSystem(code))[0]?.message ?? [], units);
    expect(codes(datumNote(createSystem(2226)))).toEqual(["systems/datum-differs"]);
    expect(said(2226, "metric")).toContain("1 to 2 m (3 to 7 ft)");
    expect(said(2226, "us")).toBe(said(2226, "metric"));
    expect(said(25832, "metric")).toContain("ETRS89");
    expect(said(25832, "metric")).toContain("up to 2 m");
  });

  test("a shifted datum says how well the shift holds", () => {
    const [note] = datumNote(createSystem(2056));
    expect(note?.code).toBe("systems/datum-shifted");
    expect(text(note?.message ?? [], "metric")).toContain("about 1 m");
  });

  test("a definition without a datum is warned of", () => {
    const read = statedSystem("+proj=utm +zone=10 +ellps=clrk66 +units=m");
    expect(read.ok && datumNote(read.value).map(({ code, severity }) => [code, severity])).toEqual([
      ["systems/datum-not-named", "warning"],
    ]);
  });
});

describe("stated systems", () => {
  it.each([
    ["a datum whose file of shifts proj4 would pass over", "+proj=utm +zone=10 +datum=NAD27", "systems/grid-system"],
    ["a file of shifts", "+proj=utm +zone=10 +ellps=clrk66 +nadgrids=conus", "systems/bad-system"],
    ["a file of shifts that may be missing", "+proj=utm +zone=10 +ellps=clrk66 +nadgrids=@conus", "systems/bad-system"],
    ["a datum by a short name only", "+proj=utm +zone=32 +datum=potsdam", "systems/grid-system"],
    ["chains", "+proj=utm +zone=10 +datum=WGS84 +units=ch", "systems/bad-system"],
    ["a unit by its length", "+proj=utm +zone=10 +datum=WGS84 +to_meter=0.9144", "systems/bad-system"],
    ["no projection", "somewhere in Sonoma", "systems/bad-system"],
    ["a projection that is none", "+proj=onion +datum=WGS84", "systems/bad-system"],
  ])("%s: refused", (_what, definition, code) => {
    expect(codes(statedSystem(definition).findings)).toEqual([code]);
  });

  test("a missing origin stands for 0", () => {
    const read = statedSystem("+proj=aea +lat_1=34 +lat_2=40.5 +lon_0=-120 +datum=NAD83 +units=m");
    expect(read.ok && read.value.fromLonLat(-120, 37).every(Number.isFinite)).toBe(true);
  });

  test("numbers that no place has give no number, and never an exception", () => {
    for (const code of [32610, 2226, 3857, 2056, 3035, 4326]) {
      const { fromLonLat, toLonLat } = createSystem(code);
      for (const value of [NaN, Infinity, -1e300, 1e15]) {
        expect(fromLonLat(value, value)).toHaveLength(2);
        expect(toLonLat(value, value)).toHaveLength(2);
      }
    }
  });
});

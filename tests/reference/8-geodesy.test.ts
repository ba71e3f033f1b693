import geographiclib from "geographiclib-geodesic/geographiclib-geodesic.js";
import proj4 from "proj4";
import { describe, expect, it } from "vitest";
import { lonLat, planePoint } from "../../src/core/plane/coordinate.ts";
import { createFrame } from "../../src/core/plane/frame.ts";
import { geodesic, geodesicArea } from "../support/geodesic.ts";
import { type Source, titled } from "./source.ts";

const { Geodesic } = geographiclib;

/** Degrees from degrees, minutes and seconds; the sign stands before the degrees. */
function dms(sign: 1 | -1, degrees: number, minutes: number, seconds: number): number {
  return sign * (degrees + minutes / 60 + seconds / 3600);
}

describe("8.1 the ellipsoid of the plane", () => {
  const definition: Source = { computed: "WGS84 from its definition, a 6378137 m, 1/f 298.257223563" };
  const rows = [
    { id: "8.1-1", lat: 0, perLat_m: 110574.2758, perLon_m: 111319.4908 },
    { id: "8.1-2", lat: 42.6, perLat_m: 111084.9474, perLon_m: 82067.905 },
    { id: "8.1-3", lat: 49.6, perLat_m: 111221.3458, perLon_m: 72288.8388 },
  ] as const;
  const tolerance_m = 1e-3;

  it.each(rows.map((row) => [titled(row.id, definition), row] as const))("%s", (_, { lat, perLat_m, perLon_m }) => {
    const frame = createFrame(lonLat(10, lat));
    const step_deg = 0.001;
    const [, north] = frame.toPlane(lonLat(10, lat + step_deg));
    const [, south] = frame.toPlane(lonLat(10, lat - step_deg));
    const [east] = frame.toPlane(lonLat(10 + step_deg, lat));
    expect(Math.abs((north - south) / (2 * step_deg) - perLat_m)).toBeLessThan(tolerance_m);
    expect(Math.abs(east / step_deg - perLon_m)).toBeLessThan(tolerance_m);
  });

  it("8.1-4 (computed: WGS84) 8 decimals of a degree are 1.1 mm", () => {
    const [, y] = createFrame(lonLat(10, 0)).toPlane(lonLat(10, 1e-8));
    expect(y * 1000).toBeCloseTo(1.11, 2);
  });
});

describe("8.2 the geodesics that rows are held against reproduce published lines", () => {
  const karney: Source = { fromMemory: "Karney 2013, Algorithms for geodesics, worked examples" };
  const vincenty: Source = { fromMemory: "Vincenty 1975, Survey Review XXIII, test lines" };
  const geodTest: Source = { computedAsPublished: "GeodTest rows among the tests of geographiclib-js" };
  const wgs84 = Geodesic.WGS84;

  it(titled("8-1", { computedAsPublished: "public Vincenty tests, Flinders Peak to Buninyong on GRS80" }), () => {
    const grs80 = new Geodesic.Geodesic(6378137, 1 / 298.257222101);
    const line = grs80.Inverse(
      dms(-1, 37, 57, 3.7203),
      dms(1, 144, 25, 29.5244),
      dms(-1, 37, 39, 10.1561),
      dms(1, 143, 55, 35.3839),
    );
    expect(Math.abs((line.s12 ?? 0) - 54972.271139)).toBeLessThan(1e-3);
    expect(Math.abs((((line.azi1 ?? 0) + 360) % 360) - dms(1, 306, 52, 5.373)) * 3600).toBeLessThan(1e-3);
    expect(Math.abs((((line.azi2 ?? 0) + 180) % 360) - dms(1, 127, 10, 25.07)) * 3600).toBeLessThan(1e-3);
  });

  const inverses = [
    {
      id: "8-2",
      source: geodTest,
      from: [35.60777, -139.44815],
      to: [-11.17491, -69.95921],
      s: 8935244.5604818,
      azi1: 111.09874842956,
      azi2: 129.289270889709,
      tolerance_m: 1e-6,
    },
    {
      id: "8-3",
      source: geodTest,
      from: [-19.79938, -174.47484],
      to: [-11.99349, -154.35109],
      s: 2319004.8601169,
      azi1: 71.167275780172,
      azi2: 65.589099775199,
      tolerance_m: 1e-6,
    },
    {
      id: "8-4",
      source: geodTest,
      from: [-41.22777, 122.32875],
      to: [-7.57291, 130.37946],
      s: 3812686.035106,
      azi1: 14.285113402276,
      azi2: 10.805303085187,
      tolerance_m: 1e-6,
    },
    {
      id: "8-6",
      source: karney,
      from: [-30, 0],
      to: [29.9, 179.8],
      s: 19989832.82761,
      azi1: 161.8905247363,
      azi2: 18.0907372457,
      tolerance_m: 1e-5,
    },
  ] as const;
  it.each(inverses.map((row) => [titled(row.id, row.source), row] as const))("%s", (_, row) => {
    const line = wgs84.Inverse(row.from[0], row.from[1], row.to[0], row.to[1]);
    expect(Math.abs((line.s12 ?? 0) - row.s)).toBeLessThanOrEqual(row.tolerance_m);
    expect(Math.abs((line.azi1 ?? 0) - row.azi1)).toBeLessThan(1e-9);
    expect(Math.abs((line.azi2 ?? 0) - row.azi2)).toBeLessThan(1e-9);
  });

  it(titled("8-5", karney), () => {
    const line = wgs84.Direct(40, 0, 30, 1e7);
    expect(Math.abs((line.lat2 ?? 0) - 41.793310205056)).toBeLessThan(1e-10);
    expect(Math.abs((line.lon2 ?? 0) - 137.844900043771)).toBeLessThan(1e-10);
    expect(Math.abs((line.azi2 ?? 0) - 149.090169318072)).toBeLessThan(1e-10);
  });

  const international1924 = new Geodesic.Geodesic(6378388, 1 / 297);
  const directs = [
    {
      id: "8-7",
      ellipsoid: new Geodesic.Geodesic(6377397.155, 1 / 299.1528128),
      lat: dms(1, 55, 45, 0),
      azimuth: dms(1, 96, 36, 8.7996),
      s: 14110526.17,
      to: [dms(-1, 33, 26, 0), dms(1, 108, 13, 0), dms(1, 137, 52, 22.0145)],
    },
    {
      id: "8-8",
      ellipsoid: international1924,
      lat: dms(1, 37, 19, 54.95367),
      azimuth: dms(1, 95, 27, 59.63089),
      s: 4085966.703,
      to: [dms(1, 26, 7, 42.8395), dms(1, 41, 28, 35.5073), dms(1, 118, 5, 58.9616)],
    },
    {
      id: "8-9",
      ellipsoid: international1924,
      lat: dms(1, 35, 16, 11.24862),
      azimuth: dms(1, 15, 44, 23.7485),
      s: 8084823.839,
      to: [dms(1, 67, 22, 14.7764), dms(1, 137, 47, 28.3144), dms(1, 144, 55, 39.9215)],
    },
  ] as const;
  it.each(directs.map((row) => [titled(row.id, vincenty), row] as const))("%s", (_, row) => {
    const line = row.ellipsoid.Direct(row.lat, 0, row.azimuth, row.s);
    const found = [line.lat2 ?? 0, line.lon2 ?? 0, line.azi2 ?? 0];
    found.forEach((value, i) => {
      expect(Math.abs(value - (row.to[i] ?? 0)) * 3600).toBeLessThanOrEqual(0.0002);
    });
  });
});

describe("8.2 short lines in the plane", () => {
  const oracle: Source = { computed: "GeographicLib" };
  const directs = [
    { id: "8.2-1", from: [42.6, -76.9], azimuth: 0, s: 100, to: [42.6009002119, -76.9] },
    { id: "8.2-2", from: [42.6, -76.9], azimuth: 90, s: 100, to: [42.59999999352, -76.89878149686] },
    { id: "8.2-3", from: [42.6, -76.9], azimuth: 37, s: 300, to: [42.60215680222, -76.89779998363] },
    { id: "8.2-4", from: [42.6, -76.9], azimuth: 143, s: 250, to: [42.59820263193, -76.89816676895] },
    { id: "8.2-5", from: [49.6, 6.1], azimuth: 90, s: 100, to: [49.59999999173, 6.10138333941] },
    { id: "8.2-6", from: [-34.5, 19], azimuth: 45, s: 500, to: [-34.49681280455, 19.00384952099] },
  ] as const;

  it.each(directs.map((row) => [titled(row.id, oracle), row] as const))("%s", (_, { from, azimuth, s, to }) => {
    const frame = createFrame(lonLat(from[1], from[0]));
    const angle = (azimuth * Math.PI) / 180;
    const [lon, lat] = frame.toLonLat(planePoint(s * Math.sin(angle), s * Math.cos(angle)));
    expect(Math.abs(lat - to[0])).toBeLessThan(1e-10);
    expect(Math.abs(lon - to[1])).toBeLessThan(1e-10);
  });

  const inverses = [
    { id: "8.2-7", to: [42.602, -76.897], length_m: 331.622994, azimuth_deg: 47.93598614 },
    { id: "8.2-8", to: [42.602, -76.9], length_m: 222.169934, azimuth_deg: 0 },
    { id: "8.2-9", to: [42.6, -76.898], length_m: 164.13581, azimuth_deg: null },
  ] as const;
  it.each(inverses.map((row) => [titled(row.id, oracle), row] as const))("%s", (_, { to, length_m, azimuth_deg }) => {
    const [x, y] = createFrame(lonLat(-76.9, 42.6)).toPlane(lonLat(to[1], to[0]));
    expect(Math.abs(Math.hypot(x, y) - length_m)).toBeLessThan(1e-6);
    if (azimuth_deg !== null) expect(Math.abs((Math.atan2(x, y) * 180) / Math.PI - azimuth_deg)).toBeLessThan(1e-6);
  });

  it(titled("8.2-10", oracle), () => {
    const corners = [
      [-76.9, 42.6],
      [-76.897, 42.6],
      [-76.897, 42.602],
      [-76.9, 42.602],
    ] as const;
    const ring = corners.map(([lon, lat]) => lonLat(lon, lat));
    const frame = createFrame(lonLat(-76.9, 42.6));
    const flat = ring.map((at) => frame.toPlane(at));
    const next = (i: number) => flat[(i + 1) % flat.length] ?? planePoint(0, 0);
    const perimeter_m = flat.reduce((sum, [x, y], i) => sum + Math.hypot(next(i)[0] - x, next(i)[1] - y), 0);
    const area_m2 = flat.reduce((sum, [x, y], i) => sum + (x * next(i)[1] - next(i)[0] * y) / 2, 0);
    expect(Math.abs(perimeter_m - 936.739423)).toBeLessThan(1e-6);
    expect(Math.abs(area_m2 - 54698.1884)).toBeLessThan(1e-3);
    expect(Math.abs(geodesicArea(ring) - 54698.1884)).toBeLessThan(1e-3);
  });

  it(titled("8.2-11", { computed: "transverse Mercator, k 1, origin 42.6, -76.9" }), () => {
    const at = lonLat(-76.897, 42.602);
    const [x, y] = createFrame(lonLat(-76.9, 42.6)).toPlane(at);
    expect(Math.abs(x - 246.195841)).toBeLessThan(1e-6);
    expect(Math.abs(y - 222.174297)).toBeLessThan(1e-6);
    expect(Math.abs(Math.hypot(x, y) - geodesic(lonLat(-76.9, 42.6), at).length_m)).toBeLessThan(1e-6);
  });
});

describe("8.3 the projection library", () => {
  const utm = (zone: number) => proj4(`+proj=utm +zone=${zone} +ellps=WGS84 +units=m`);

  const conversions = [
    {
      id: "8-10",
      source: { fromMemory: "documentation of a UTM package, 444140.54 3684706.36" },
      definition: "+proj=utm +zone=38 +ellps=WGS84",
      lat: 33.3,
      lon: 44.4,
      to: [444140.5449, 3684706.3555],
      tolerance_m: 1e-3,
    },
    {
      id: "8-11",
      source: { computed: "transverse Mercator" },
      definition: "+proj=utm +zone=18 +ellps=WGS84",
      lat: 42.6,
      lon: -76.9,
      to: [344130.9096, 4718146.6935],
      tolerance_m: 1e-3,
    },
    {
      id: "8-12",
      source: { fromMemory: "Snyder 1987, USGS Professional Paper 1395, p. 269" },
      definition: "+proj=tmerc +lat_0=0 +lon_0=-75 +k=0.9996 +ellps=clrk66",
      lat: 40.5,
      lon: -73.5,
      to: [127106.467, 4484124.434],
      tolerance_m: 0.05,
    },
    {
      id: "8-13",
      source: { fromMemory: "EPSG Guidance Note 7-2, British National Grid" },
      definition: "+proj=tmerc +lat_0=49 +lon_0=-2 +k=0.9996012717 +x_0=400000 +y_0=-100000 +ellps=airy",
      lat: 50.5,
      lon: 0.5,
      to: [577274.984, 69740.492],
      tolerance_m: 0.01,
    },
  ] as const;
  it.each(conversions.map((row) => [titled(row.id, row.source), row] as const))("%s", (_, row) => {
    const { x, y } = proj4(`${row.definition} +units=m`).forward({ x: row.lon, y: row.lat });
    expect(Math.abs(x - row.to[0])).toBeLessThanOrEqual(row.tolerance_m);
    expect(Math.abs(y - row.to[1])).toBeLessThanOrEqual(row.tolerance_m);
  });

  // Why rows are never measured in UTM: metres of the grid for 100 m on the ground, in zone 18.
  const scales = [
    { id: "8.3-1", lon: -75, grid_m: 99.96 },
    { id: "8.3-2", lon: -76.9, grid_m: 99.989872 },
    { id: "8.3-3", lon: -78.9, grid_m: 100.085933 },
  ] as const;
  it.each(scales.map((row) => [titled(row.id, { computed: "UTM on the ellipsoid, 42.6 N" }), row] as const))(
    "%s",
    (_, row) => {
      const from = lonLat(row.lon, 42.5995);
      const to = lonLat(row.lon, 42.6005);
      const [p, q] = [from, to].map((at) => utm(18).forward({ x: at[0], y: at[1] }));
      if (p === undefined || q === undefined) throw new Error("no grid point");
      const grid_m = (100 * Math.hypot(q.x - p.x, q.y - p.y)) / geodesic(from, to).length_m;
      expect(Math.abs(grid_m - row.grid_m)).toBeLessThan(1e-4);
    },
  );

  // Grid bearing = true bearing - convergence, 42.6 N, central meridian -75.
  const convergences = [
    { id: "8.3-4", lon: -76.9, convergence_deg: -1.28632 },
    { id: "8.3-5", lon: -78.9, convergence_deg: -2.64203 },
  ] as const;
  it.each(convergences.map((row) => [titled(row.id, { computed: "atan(tan Δλ sin φ)" }), row] as const))(
    "%s",
    (_, row) => {
      const frame = createFrame(lonLat(-75, 42.6));
      const convergence_deg = frame.convergence_deg(frame.toPlane(lonLat(row.lon, 42.6)));
      expect(Math.abs(convergence_deg - row.convergence_deg)).toBeLessThan(1e-4);
    },
  );
});

import { describe, expect, test } from "vitest";
import { text } from "../../src/core/units.ts";
import { gpxHeights } from "../../src/readers/gpx-heights.ts";

/** A track as GPX 1.1 (Topografix, 2004) writes it; places and heights invented. */
const walked = `<?xml version="1.0" encoding="UTF-8"?>
<gpx version="1.1" creator="invented" xmlns="http://www.topografix.com/GPX/1/1">
  <wpt lat="42.6" lon="-76.9"><ele>1</ele></wpt>
  <trk><name>round the field</name>
    <trkseg>
      <trkpt lat="42.6001" lon="-76.9001"><ele>201.5</ele><time>2026-03-01T10:00:00Z</time></trkpt>
      <trkpt lon='-76.9002' lat='42.6002'><ele>0</ele></trkpt>
      <!-- <trkpt lat="1" lon="1"><ele>9</ele></trkpt> -->
      <trkpt lat="42.6003" lon="-76.9003"></trkpt>
    </trkseg>
    <trkseg><trkpt lat="42.6004" lon="-76.9004"><ele>-3.25</ele></trkpt><trkpt lat="42.6005" lon="-76.9005"><ele>2e2</ele></trkpt></trkseg>
  </trk>
</gpx>`;

describe("heights of a walked track", () => {
  test("are those of its points, a line a segment; a height of 0 is one, and points without any are left out", () => {
    const read = gpxHeights(walked, "walk", "round.gpx");
    expect(read.ok && read.value).toEqual({
      type: "Feature",
      id: "walk",
      properties: { role: "elevation", name: "round.gpx" },
      geometry: {
        type: "MultiLineString",
        coordinates: [
          [
            [-76.9001, 42.6001, 201.5],
            [-76.9002, 42.6002, 0],
          ],
          [
            [-76.9004, 42.6004, -3.25],
            [-76.9005, 42.6005, 200],
          ],
        ],
      },
    });
  });

  test.each([
    ["no GPX", "hello"],
    ["a track without heights", walked.replace(/<ele>[^<]*<\/ele>/g, "")],
    ["places that are none", walked.replaceAll('lat="42', 'lat="142').replaceAll("lat='42", "lat='142")],
  ])("%s is refused with a sentence", (_, file) => {
    const read = gpxHeights(file, "walk", "round.gpx");
    expect(read.ok).toBe(false);
    expect(read.findings.map(({ code }) => code)).toEqual(["readers/no-track-heights"]);
    expect(text(read.findings[0]?.message ?? [], "metric")).toBe("round.gpx holds no track with heights.");
  });
});

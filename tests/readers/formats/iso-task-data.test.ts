import { strToU8, zipSync } from "fflate";
import { describe, expect, test } from "vitest";
import { found, saidOf } from "../../support/survived.ts";

const point = (kind: number, lat: number | string, lon: number | string, name = "") =>
  `<PNT A="${kind}" B="${name}" C="${lat}" D="${lon}"/>`;
const ring = (kind: number, places: readonly (readonly [lat: number, lon: number])[]) =>
  `<LSG A="${kind}">${places.map(([lat, lon]) => point(2, lat, lon)).join("")}</LSG>`;
const square = (lat: number, lon: number, side: number) =>
  [
    [lat, lon],
    [lat, lon + side],
    [lat + side, lon + side],
    [lat + side, lon],
  ] as const;
const file = (inside: string, version = 4) =>
  `<?xml version="1.0" encoding="UTF-8"?><ISO11783_TaskData VersionMajor="${version}" VersionMinor="0" DataTransferOrigin="2">${inside}</ISO11783_TaskData>`;
const field = (inside: string) => file(`<PFD A="PFD1" C="Home" D="0">${inside}</PFD>`);
const zip = (files: Readonly<Record<string, string>>) =>
  zipSync(Object.fromEntries(Object.entries(files).map(([name, text]) => [name, strToU8(text)])));

describe("what terminals write", () => {
  test("a boundary with a hole, whether its ring repeats its first place or not", async () => {
    const outer = square(42, -76, 0.01);
    const inner = square(42.002, -75.998, 0.002);
    const open = await found("TASKDATA.XML", field(`<PLN A="1">${ring(1, outer)}${ring(2, inner)}</PLN>`));
    const shut = await found(
      "TASKDATA.XML",
      field(`<PLN A="1">${ring(1, [...outer, outer[0]])}${ring(2, inner)}</PLN>`),
    );
    expect(open.features).toEqual(shut.features);
    expect(open.features[0]).toMatchObject({
      name: "Home",
      layer: "Home",
      geometry: { type: "Polygon" },
      values: [["kind", "boundary"]],
    });
    expect(open.features[0]?.geometry).toMatchObject({ coordinates: { length: 2 } });
  });

  test("two outer rings in one boundary are two pieces, a ring within is a hole whatever it says", async () => {
    const rings =
      ring(1, square(42, -76, 0.01)) + ring(1, square(42.1, -76, 0.01)) + ring(1, square(42.002, -75.998, 0.002));
    const { features } = await found("TASKDATA.XML", field(`<PLN A="1">${rings}</PLN>`));
    expect(features[0]?.geometry).toMatchObject({ type: "MultiPolygon", coordinates: { length: 2 } });
  });

  test("guidance lines of version 4 stand in groups, those of version 3 in the field", async () => {
    const line = `<LSG A="5" B="AB 1">${point(6, 42, -76)}${point(7, 42.001, -76)}</LSG>`;
    const four = await found(
      "TASKDATA.XML",
      field(`<GGP A="GGP1" B="east"><GPN A="GPN1" B="AB 1" C="1">${line}</GPN></GGP>`),
    );
    const three = await found("TASKDATA.XML", field(line).replace('Major="4"', 'Major="3"'));
    for (const { features } of [four, three]) {
      expect(features.map(({ name, geometry }) => [name, geometry.type])).toEqual([["AB 1", "LineString"]]);
    }
    expect(four.features[0]?.values).toEqual([
      ["kind", "guidance line A to B"],
      ["group", "east"],
    ]);
  });

  test("a line from a place by a heading comes as its place, and that is told", async () => {
    const text = field(
      `<GGP A="GGP1"><GPN A="GPN1" B="A+" C="2" G="12.5"><LSG A="5">${point(6, 42, -76)}</LSG></GPN></GGP>`,
    );
    const { features } = await found("TASKDATA.XML", text);
    expect(features[0]).toMatchObject({ geometry: { type: "Point", coordinates: [-76, 42] } });
    expect(features[0]?.values).toContainEqual(["heading_deg", "12.5"]);
    expect(await saidOf("TASKDATA.XML", text)).toEqual(["readers/lines-without-end"]);
  });

  test("flags and gates are points with their names", async () => {
    const { features } = await found("TASKDATA.XML", field(point(3, 42, -76, "gate") + point(1, 42, -76, "stump")));
    expect(features.map(({ name, values }) => [name, values[0]?.[1]])).toEqual([
      ["gate", "field access"],
      ["stump", "flag"],
    ]);
  });

  test("fields in a file beside the task file are read with it, whatever folder they are in", async () => {
    const beside = `<?xml version="1.0"?><XFC><PFD A="PFD2" C="Far" D="0">${point(1, 42, -76, "stump")}</PFD></XFC>`;
    const bytes = zip({
      "card/TASKDATA/TASKDATA.XML": file('<XFR A="PFD00001" B="1"/>'),
      "card/TASKDATA/PFD00001.XML": beside,
    });
    expect((await found("card.zip", bytes)).features[0]).toMatchObject({ name: "stump", layer: "Far" });
  });
});

describe("broken and hostile task data", () => {
  const bomb = '<!DOCTYPE x [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;&a;&a;">]>';
  test.each([
    ["cut off", field(point(1, 42, -76)).slice(0, -30), "readers/broken-file"],
    ["with entities of its own", field(point(1, 42, -76, "&b;")).replace("?>", `?>${bomb}`), "readers/broken-file"],
    ["without a field", file(""), "readers/nothing-found"],
    ["of another kind inside", "<ISO11783_TaskData", "readers/broken-file"],
  ])("a task file that is %s is refused", async (_, text, code) => {
    expect(await saidOf("TASKDATA.XML", text)).toEqual([code]);
  });

  test("an archive without a task file is refused", async () => {
    expect(await saidOf("a.zip", zip({ "TASKDATA/NOTES.TXT": "nothing" }))).toEqual(["readers/broken-file"]);
  });

  test("an archive that is cut off is refused", async () => {
    const bytes = zip({ "TASKDATA/TASKDATA.XML": field(point(1, 42, -76)) });
    expect(await saidOf("a.zip", bytes.slice(0, -40))).toEqual(["readers/broken-file"]);
  });

  test.each([
    ["beyond the pole", point(1, 95, -76)],
    ["that are no number", point(1, "north", -76)],
    ["that are missing", '<PNT A="1"/>'],
    [
      "of a ring of two",
      `<PLN A="1">${ring(1, [
        [42, -76],
        [42, -75],
      ])}</PLN>`,
    ],
    ["of a line with a hole in it", `<LSG A="7">${point(2, 42, -76)}${point(2, "", "")}${point(2, 42, -75)}</LSG>`],
  ])("places %s are left out and told, the others come in", async (_, inside) => {
    const text = field(inside + point(1, 42, -76, "stump"));
    expect((await found("TASKDATA.XML", text)).features.map(({ name }) => name)).toEqual(["stump"]);
    expect(await saidOf("TASKDATA.XML", text)).toEqual(["readers/without-numbers"]);
  });

  test("names are text, whatever stands in them", async () => {
    const { features } = await found(
      "TASKDATA.XML",
      field(point(1, 42, -76, "&lt;b onclick=&quot;x&quot;&gt; __proto__")),
    );
    expect(features[0]?.name).toBe('<b onclick="x"> __proto__');
  });
});

import { expect, test } from "vitest";
import { z } from "zod";
import { say } from "./create-terminal.ts";

/** A parcel of about 70 by 90 m with a well at its south-west corner, invented. */
function projectText(settings: object = {}): string {
  const [lon, lat] = [14.2, 48.4];
  const ring = [
    [lon, lat],
    [lon + 0.00095, lat],
    [lon + 0.00095, lat + 0.0008],
    [lon, lat + 0.0008],
    [lon, lat],
  ];
  return JSON.stringify({
    type: "FeatureCollection",
    features: [
      { type: "Feature", properties: { role: "parcel" }, geometry: { type: "Polygon", coordinates: [ring] } },
      {
        type: "Feature",
        id: "well",
        properties: { role: "source", name: "Well" },
        geometry: { type: "Point", coordinates: [lon + 0.00005, lat + 0.00002] },
      },
    ],
    tautrow: { version: 1, units: "metric", rows: { bearing: 0 }, ...settings },
  });
}

const tap = {
  water: {
    kind: "measured",
    staticPressure: "4 bar",
    tests: [{ volume: "20 L", time: "90 s", pressure: "3 bar" }],
  },
  season: { reference: [1, 1.5, 2.5, 3.8, 5, 6.2, 7, 6.2, 4.8, 3, 1.6, 1] },
};

const planned = async (settings: object, args: readonly string[] = []) =>
  (await say(["plan", "-", ...args], { input: projectText(settings) })).out;

test("water is told in the order of the handbook: need, emitters, set time, sets, evenness, rows, pipes, head, year, first run", async () => {
  const out = await planned(tap);
  const order = [
    /^Need of .* in July: a grown vine [\d.]+ L a week at peak/m,
    /^Emitters: [\d,]+ emitters of 1\.89 L\/h at 100 kPa, pressure-compensating/m,
    /^Set time in July: one set usually runs/m,
    /^Water: its flow and pressure are enough; \d sets/m,
    /^set +rows +flow/m,
    /^Evenness of .*emission uniformity/m,
    /^Rows of .* need/m,
    /^pipe of +size +length +fastest/m,
    /^Where the head goes, set \d:/m,
    /^month +reference/m,
    /^First run:/m,
    /^Main line:/m,
  ].map((part) => out.search(part));
  expect(order.every((place) => place > 0)).toBe(true);
  expect(order).toEqual([...order].sort((a, b) => a - b));
});

test("water that is not known yet is told as such, with what rows need and how to state it", async () => {
  const out = await planned({});
  expect(out).toContain("Water: not known yet");
  expect(out).toMatch(/^Rows of .* need [\d.]+ kPa/m);
  expect(out).not.toContain("First run");
});

test("water can be stated on the command line, with units, lists too", async () => {
  const args = [
    "--set",
    "water.kind=measured",
    "--set",
    "water.staticPressure=60 psi",
    "--set",
    'water.tests=[{"volume":"5 gal","time":"60 s","pressure":"45 psi"}]',
    "--units",
    "us",
  ];
  const out = await planned({}, args);
  expect(out).toMatch(/^Water: its flow and pressure are enough/m);
  expect(out).toMatch(/psi at the gauge/);
});

test("gallons per hour for gallons per minute is warned of with what is suspected", async () => {
  const args = ["--set", "water.kind=town", "--set", "water.staticPressure=60 psi"];
  const { out } = await say(["check", "-", ...args, "--set", "water.limitFlow=12 gal/h", "--units", "us"], {
    input: projectText(),
  });
  expect(out.replace(/\s+/g, " ")).toContain("per minute it would be 12 gal/min");
});

test("too little water is said in words and numbers", async () => {
  const out = await planned({
    ...tap,
    water: { ...tap.water, staticPressure: "1.3 bar", tests: [{ volume: "20 L", time: "90 s", pressure: "1.2 bar" }] },
  });
  expect(out.replaceAll(/\s+/g, " ")).toMatch(
    /Water: its flow and pressure are not enough as it is; .* lacks [\d.]+ kPa at its tee/,
  );
});

test("where hours are too few, what helps is told with its numbers and how to set it, and helps when it is set", async () => {
  const cool = { reference: [0.5, 0.8, 1.2, 1.8, 2.4, 2.9, 3, 2.8, 2, 1.2, 0.7, 0.5] };
  const short = { ...tap, season: cool, water: { ...tap.water, hoursADay: 4 } };
  const out = await planned(short);
  expect(out).toMatch(/^What would help, each by itself:$/m);
  const [, hours = ""] = /^ +--set '(water\.hoursADay=\d+)'$/m.exec(out) ?? [];
  expect(hours).not.toBe("");
  expect(await planned(short, ["--set", hours])).not.toContain("What would help");
});

test("the plan as JSON has the same sets as the tables", async () => {
  const set = z.object({ name: z.string(), rows: z.array(z.string()), flow_lph: z.number() });
  const shape = z.object({ drip: z.object({ sets: z.array(set) }) });
  const { drip } = shape.parse(JSON.parse(await planned(tap, ["--json"])));
  const out = await planned(tap);
  expect(drip.sets.length).toBeGreaterThan(1);
  for (const { name, flow_lph } of drip.sets) {
    const [, flow = ""] = new RegExp(`^${name} +.* ([\\d.]+) L/h `, "m").exec(out) ?? [];
    expect(Math.abs(Number(flow) - flow_lph)).toBeLessThan(0.01);
  }
});

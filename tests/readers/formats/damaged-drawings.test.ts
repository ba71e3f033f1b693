import { readFileSync } from "node:fs";
import fc from "fast-check";
import { expect, test } from "vitest";
import { createPlanner } from "../../../src/core/planner.ts";
import { readFile } from "../../../src/readers/read-file.ts";
import { bytesOf, handedOver } from "../../support/handed-over.ts";
import { readSample } from "../../support/sample-plans.ts";
import { fileOf } from "../../support/survived.ts";

/* Files with bytes changed, cut out and put in: whatever comes of them is an answer, never an exception, and a failure says why. */
const plan = createPlanner().plan(readSample("crooked-strip"));
const [task = new Uint8Array()] = Object.values(
  bytesOf(handedOver(plan, { as: "iso-task-data", of: ["parcels", "rows"] })),
);
const [survey = new Uint8Array()] = Object.values(
  bytesOf(handedOver(plan, { as: "landxml", of: ["parcels", "route", "stations"] })),
);
const whole: readonly (readonly [name: string, bytes: Uint8Array])[] = [
  ["drawn-r2000.dxf", new Uint8Array(readFileSync("tests/fixtures/exchange/dxf/drawn-r2000.dxf"))],
  ["gdal.dxf", new Uint8Array(readFileSync("tests/fixtures/exchange/dxf/gdal.dxf"))],
  ["taskdata.zip", task],
  ["plan.xml", survey],
];

const damage = fc.record({
  at: fc.double({ min: 0, max: 1, noNaN: true }),
  gone: fc.nat({ max: 200 }),
  put: fc.oneof(
    fc.uint8Array({ maxLength: 20 }),
    fc.constantFrom("0\nSECTION\n", "-1e308", "<", '"', "&x;", "0\nINSERT\n2\nSHEET\n"),
  ),
});

test.each(whole)("%s, damaged, gives an answer", async (name, bytes) => {
  await fc.assert(
    fc.asyncProperty(fc.array(damage, { minLength: 1, maxLength: 4 }), async (damages) => {
      let file: Uint8Array = bytes;
      for (const { at, gone, put } of damages) {
        const from = Math.floor(at * file.length);
        const filling = typeof put === "string" ? new TextEncoder().encode(put) : put;
        file = Uint8Array.from([...file.subarray(0, from), ...filling, ...file.subarray(from + gone)]);
      }
      const outcome = await readFile(fileOf(name, file), { system: "EPSG:32633", unit: "m", isSwapped: null });
      if (outcome.ok)
        for (const { geometry } of outcome.value.features) expect(JSON.stringify(geometry)).not.toContain("null");
      else expect(outcome.findings.some(({ severity }) => severity === "error")).toBe(true);
    }),
    { seed: 11, numRuns: 60 },
  );
});

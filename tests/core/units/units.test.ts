import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { quantity, say } from "../../../src/core/finding.ts";
import {
  formatQuantity,
  gaugeDiameter_mm,
  inUnit,
  parseQuantity,
  type QuantityKind,
  text,
  type UnitSystem,
  unitSystems,
  wireGauges,
} from "../../../src/core/units.ts";

/** Conversions are exact up to the last bits of a double. */
const relativeTolerance = 1e-14;

function read(kind: QuantityKind, input: number | string): number {
  const parsed = parseQuantity(kind, input);
  if (!parsed.ok) throw new Error(`${input}: ${parsed.reason}`);
  return parsed.value;
}

function refusal(kind: QuantityKind, input: number | string): string {
  const parsed = parseQuantity(kind, input);
  return parsed.ok ? `taken as ${parsed.value}` : parsed.reason;
}

describe("a quantity as a grower writes it", () => {
  it.each([
    ["length", "8 ft", 2.4384],
    ["length", "8 FT.", 2.4384],
    ["length", "8 feet", 2.4384],
    ["length", "2.4 m", 2.4],
    ["length", "240 cm", 2.4],
    ["length", "2m40cm", 2.4],
    ["length", "7 ft 6 in", 2.286],
    ["length", "7ft6in", 2.286],
    ["length", "7 feet, 6 inches", 2.286],
    ["length", `7' 6"`, 2.286],
    ["length", "7′ 6″", 2.286],
    ["length", "7' 6", 2.286],
    ["length", `7'-6"`, 2.286],
    ["length", `7'6-1/2"`, 2.2987],
    ["length", "1/2 in", 0.0127],
    ["length", "7½ in", 0.1905],
    ["length", "-7 ft 6 in", -2.286],
    ["length", "1,000 ft", 304.8],
    ["length", "12,345.5 m", 12345.5],
    ["length", "1e3 mm", 1],
    ["length", "2 ft", 0.6096],
    ["length", "2 usft", 2400 / 3937],
    ["length", "2 US survey feet", 2400 / 3937],
    ["diameter", "2.5 mm", 2.5],
    ["diameter", "0.099 in", 2.5146],
    ["angle", "24°", 24],
    ["angle", "24 deg", 24],
    ["angle", `24° 30' 36"`, 24.51],
    ["ratio", "5 %", 0.05],
    ["ratio", "5 per cent", 0.05],
    ["flow", "0.5 gal/h", 1.892705892],
    ["flow", "0.5 U.S. gal/hr", 1.892705892],
    ["flow", "0.5 gallons per hour", 1.892705892],
    ["flow", "2 L / h", 2],
    ["pressure", "1.5 bar", 150],
    ["pressure", "30 psi", 206.8427187950508],
    ["area", "2 acres", 8093.7128448],
    ["time", "1 h 30 min", 1.5],
    ["force", "100 lbf", 444.82216152605],
    ["force", "1.2 kN", 1200],
    ["force", "45 kgf", 441.29925],
    ["temperature", "14 °F", -10],
    ["temperature", "-40 F", -40],
    ["temperature", "-5 C", -5],
    ["temperature", 12, 12],
    ["mass", "1 lb 4 oz", 0.5669904625],
    ["earth", "2 yd³", 1.529109715968],
    ["earth", "54 cu ft", 1.529109715968],
  ] as const)("%s %j is %d in SI", (kind, input, si) => {
    expect(Math.abs(read(kind, input) - si)).toBeLessThanOrEqual(Math.abs(si) * relativeTolerance);
  });

  it("is SI when it is a bare number or a number as text", () => {
    expect(read("length", 2.4)).toBe(2.4);
    expect(read("length", "2.4")).toBe(2.4);
    expect(read("diameter", "2.5")).toBe(2.5);
    expect(read("ratio", 0.02)).toBe(0.02);
  });

  it("may be zero, and zero has no sign", () => {
    for (const zero of [0, -0, "0", "0 m", "-0 ft", "0 ft 0 in"]) expect(Object.is(read("length", zero), 0)).toBe(true);
  });
});

describe("a quantity that could mean something else is refused with a reason", () => {
  it.each([
    ["length", "2,5 m", "comma"],
    ["length", "0,500 m", "comma"],
    ["length", "1,00 m", "comma"],
    ["length", "1 000 m", "second number"],
    ["length", "1'000", "cannot follow"],
    ["length", "5-6 ft", "second number"],
    ["length", "7.5 ft 6 in", "whole number"],
    ["length", "7 ft 14 in", "more than one whole unit"],
    ["length", "2m 40", "cannot follow"],
    ["length", "8 ft wide", "not expected"],
    ["length", "8 furlong", "no unit that fits"],
    ["length", "8 gal", "no unit that fits"],
    ["length", "ft", "begin with a number"],
    ["length", "about 8 ft", "begin with a number"],
    ["length", "", "empty"],
    ["length", "NaN", "finite"],
    ["length", Number.NaN, "finite"],
    ["length", Number.POSITIVE_INFINITY, "finite"],
    ["length", "1e400 m", "too large"],
    ["length", "1/0 in", "over 0"],
    ["length", "7 6/4 in", "less than 1"],
    ["length", "1".repeat(200), "too long"],
    ["length", "13 ga", "wire diameter"],
    ["diameter", "17 ga", "not in the table"],
    ["diameter", "13 awg", "gauge systems"],
  ] as const)("%s %j: %s", (kind, input, reason) => {
    expect(refusal(kind, input)).toContain(reason);
  });
});

describe("wire by its gauge", () => {
  // Washburn & Moen inches as read in three independent gauge tables; 12.5 from ASTM A854/A854M. Calculation handbook, 2.1.
  it.each([
    [9, 3.7668],
    [10, 3.429],
    [11, 3.0607],
    [12, 2.6797],
    [12.5, 2.5146],
    [13, 2.3241],
    [14, 2.032],
    [15, 1.8288],
    [16, 1.5875],
  ])("%d ga is %d mm thick", (gauge, diameter_mm) => {
    expect(read("diameter", `${gauge} ga`)).toBeCloseTo(diameter_mm, 4);
    expect(gaugeDiameter_mm(gauge)).toBe(read("diameter", `${gauge} gauge`));
  });

  it("reads back as the gauge in US units", () => {
    for (const gauge of wireGauges)
      expect(formatQuantity("diameter", read("diameter", `${gauge} ga`), "us")).toBe(`${gauge} ga`);
  });
});

describe("check values of the handbook (status there: factors from memory, recomputed)", () => {
  it("0-1: a hectare is 2.4710538 acres", () => {
    expect(Math.abs(inUnit("area", 10_000, "acre") - 2.4710538)).toBeLessThan(1e-7);
  });
  it("0-2: 10 m of head is 14.223343 psi", () => {
    expect(Math.abs(inUnit("pressure", read("pressure", "10 m head"), "psi") - 14.223343)).toBeLessThan(1e-6);
  });
  it("0-3: 20 gallons a minute are 1.2618039 litres a second", () => {
    expect(Math.abs(inUnit("flow", read("flow", "20 gpm"), "L/s") - 1.2618039)).toBeLessThan(1e-7);
  });
  it("0.1: the survey foot, the mile, the gallon, the pound and psi", () => {
    expect(read("length", "1 usft")).toBeCloseTo(0.304800609601, 12);
    expect(read("length", "1 mi")).toBe(1609.344);
    expect(read("volume", "1 gal")).toBe(3.785411784);
    expect(read("mass", "1 lb")).toBe(0.45359237);
    expect(read("pressure", "1 psi")).toBeCloseTo(6.894757293168, 12);
    expect(inUnit("pressure", read("pressure", "1 psi"), "ft head")).toBeCloseTo(2.30665873, 8);
  });
  it("a survey foot taken for a foot is 3.9 m off at 6.36 million feet", () => {
    expect(read("length", "6360000 usft") - read("length", "6360000 ft")).toBeCloseTo(3.877, 3);
  });
});

describe("a quantity as it is shown", () => {
  it.each([
    ["length", 2.4, "2.4 m", "7.87 ft"],
    ["length", 2.4384, "2.44 m", "8 ft"],
    ["length", 0.9144, "0.914 m", "3 ft"],
    ["length", 0.4572, "0.457 m", "1.5 ft"],
    ["length", 0.3048, "0.305 m", "1 ft"],
    ["length", 0.0254, "0.025 m", "1 in"],
    ["length", 1386, "1,386 m", "4,547.24 ft"],
    ["length", 0, "0 m", "0 ft"],
    ["length", 32_000, "32 km", "19.88 mi"],
    ["length", -0.000001, "0 m", "0 in"],
    ["area", 4200, "0.42 ha", "1.038 acres"],
    ["area", 10, "10 m²", "107.6 ft²"],
    ["diameter", 2.5, "2.5 mm", "0.0984 in"],
    ["angle", 24.5, "24.5°", "24.5°"],
    ["flow", 1.892705892, "1.89 L/h", "0.5 gal/h"],
    ["flow", 1722, "1.722 m³/h", "7.58 gal/min"],
    ["ratio", 0.02, "2 %", "2 %"],
    ["pressure", 150, "150 kPa", "21.8 psi"],
    ["time", 0.5, "30 min", "30 min"],
    ["time", 95 / 3600, "95 s", "95 s"],
    ["time", 0, "0 min", "0 min"],
    ["volume", 0.0946352946, "95 mL", "3.2 fl oz"],
    ["volume", 18.92705892, "18.93 L", "5 gal"],
    ["volume", 0, "0 L", "0 gal"],
    ["force", 444.82216152605, "445 N", "100 lbf"],
    ["force", 12_345, "12.35 kN", "2,775 lbf"],
    ["temperature", -10, "-10 °C", "14 °F"],
    ["temperature", 0, "0 °C", "32 °F"],
    ["earth", 22.653477, "22.65 m³", "29.63 yd³"],
    ["earth", 0.05, "0.05 m³", "0.065 yd³"],
    ["earth", 0, "0 m³", "0 yd³"],
  ] as const)("%s %d reads %j and %j", (kind, si, metric, us) => {
    expect(formatQuantity(kind, si, "metric")).toBe(metric);
    expect(formatQuantity(kind, si, "us")).toBe(us);
  });

  it("keeps as many decimals as a column asks for", () => {
    expect(formatQuantity("length", 91.3, "metric", 2)).toBe("91.30 m");
    expect(formatQuantity("length", 0, "metric", 2)).toBe("0.00 m");
  });

  it("says so when there is no number", () => {
    expect(formatQuantity("length", Number.NaN, "metric")).toBe("not known");
  });

  it("stands in a sentence in the reader's units", () => {
    const phrase = say`Row ${"14"} is ${quantity("length", 2.4384)} long`;
    expect(text(phrase, "us")).toBe("Row 14 is 8 ft long");
    expect(text(phrase, "metric")).toBe("Row 14 is 2.44 m long");
  });

  /** Largest step between two values that read the same: half of it is the rounding a reader meets. */
  const step: Readonly<Record<QuantityKind, number>> = {
    length: 0.01,
    area: 10,
    diameter: 0.0026,
    angle: 0.01,
    flow: 3,
    volume: 10,
    mass: 0.01,
    ratio: 0.0001,
    pressure: 0.7,
    time: 0.01,
    force: 10,
    temperature: 0.1,
    earth: 0.01,
    speed: 0.01,
    depth: 0.3,
  };
  /** Long distances are shown in hundredths of a kilometre or mile. */
  const farStep_m = 16.1;
  it("reads back as itself within its last decimal, any kind, both systems", () => {
    const kinds = fc.constantFrom<QuantityKind[]>(
      "length",
      "area",
      "diameter",
      "angle",
      "flow",
      "volume",
      "mass",
      "ratio",
      "pressure",
      "time",
      "force",
      "temperature",
      "earth",
      "speed",
      "depth",
    );
    const systems = fc.constantFrom<UnitSystem[]>(...unitSystems);
    fc.assert(
      fc.property(kinds, systems, fc.double({ min: -1e7, max: 1e7, noNaN: true }), (kind, units, value) => {
        const shown = formatQuantity(kind, value, units);
        expect(shown).toMatch(/[^\d.,\s-]/);
        const far = kind === "length" && Math.abs(value) >= 10_000 ? farStep_m : step[kind];
        const slack = far / 2 + Math.abs(value) * relativeTolerance;
        expect(Math.abs(read(kind, shown) - value)).toBeLessThanOrEqual(slack);
      }),
      { seed: 20, numRuns: 2000 },
    );
  });

  it("reads back exactly when a unit is written in full", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 100_000 }), fc.constantFrom("ft", "in", "m", "mm"), (count, unit) => {
        const si = read("length", `${count} ${unit}`);
        expect(inUnit("length", si, unit)).toBeCloseTo(count, 9);
      }),
      { seed: 21 },
    );
  });
});

it("never throws, whatever is typed", () => {
  fc.assert(
    fc.property(fc.string({ unit: "grapheme" }), (typed) => {
      const parsed = parseQuantity("length", typed);
      expect(parsed.ok ? Number.isFinite(parsed.value) : parsed.reason.length > 0).toBe(true);
    }),
    { seed: 22, numRuns: 2000 },
  );
});

import { describe, expect, it } from "vitest";
import { inUnit, parseQuantity, type QuantityKind } from "../../src/core/units.ts";
import { type Source, titled } from "./source.ts";

const sp811: Source = { fromMemory: "NIST SP 811" };
const lectureNotes: Source = { read: "Utah State University BIE 5110/6110 lecture notes, Merkley & Allen 2004" };
const computed: Source = { computed: "exact factors" };

interface Conversion {
  readonly id: string;
  readonly source: Source;
  readonly kind: QuantityKind;
  readonly given: string;
  /** In the SI unit of the kind. */
  readonly si: number;
  readonly tolerance: number;
}

const constants: readonly Conversion[] = [
  { id: "0.1 foot", source: sp811, kind: "length", given: "1 ft", si: 0.3048, tolerance: 0 },
  { id: "0.1 inch", source: sp811, kind: "length", given: "1 in", si: 0.0254, tolerance: 0 },
  { id: "0.1 mile", source: sp811, kind: "length", given: "1 mi", si: 1609.344, tolerance: 0 },
  { id: "0.1 US survey foot", source: sp811, kind: "length", given: "1 usft", si: 0.304800609601, tolerance: 5e-13 },
  { id: "0.1 acre", source: sp811, kind: "area", given: "1 acre", si: 4046.8564224, tolerance: 0 },
  {
    id: "0.1 acre in square feet",
    source: sp811,
    kind: "area",
    given: "43560 sq ft",
    si: 4046.8564224,
    tolerance: 1e-9,
  },
  { id: "0.1 US gallon", source: sp811, kind: "volume", given: "1 gal", si: 3.785411784, tolerance: 0 },
  { id: "0.1 gallon an hour", source: sp811, kind: "flow", given: "1 gph", si: 3.785411784, tolerance: 0 },
  { id: "0.1 gallon a minute", source: sp811, kind: "flow", given: "1 gpm", si: 0.0630901964 * 3600, tolerance: 1e-9 },
  {
    id: "0.1 gallons a minute in a litre a second",
    source: lectureNotes,
    kind: "flow",
    given: "15.85 gpm",
    si: 3600,
    tolerance: 1,
  },
  { id: "0.1 pound", source: sp811, kind: "mass", given: "1 lb", si: 0.45359237, tolerance: 0 },
  { id: "0.1 psi", source: sp811, kind: "pressure", given: "1 psi", si: 6.894757293168, tolerance: 1e-12 },
  { id: "0.1 bar", source: sp811, kind: "pressure", given: "1 bar", si: 100, tolerance: 0 },
  { id: "0.1 metre of head", source: computed, kind: "pressure", given: "1 m head", si: 9.80665, tolerance: 1e-12 },
];

describe("0.1 units", () => {
  it.each(constants.map((row) => [titled(row.id, row.source), row] as const))(
    "%s",
    (_, { kind, given, si, tolerance }) => {
      const parsed = parseQuantity(kind, given);
      if (!parsed.ok) throw new Error(parsed.reason);
      expect(Math.abs(parsed.value - si)).toBeLessThanOrEqual(tolerance);
    },
  );

  it(titled("0.1 psi in head", computed), () => {
    const parsed = parseQuantity("pressure", "1 psi");
    if (!parsed.ok) throw new Error(parsed.reason);
    expect(inUnit("pressure", parsed.value, "m head")).toBeCloseTo(0.70306958, 8);
    expect(inUnit("pressure", parsed.value, "ft head")).toBeCloseTo(2.30665873, 8);
  });

  it(titled("0-1", computed), () => {
    expect(Math.abs(inUnit("area", 10_000, "acre") - 2.4710538)).toBeLessThanOrEqual(1e-7);
  });

  it(titled("0-2", computed), () => {
    const head = parseQuantity("pressure", "10 m head");
    if (!head.ok) throw new Error(head.reason);
    expect(Math.abs(inUnit("pressure", head.value, "psi") - 14.223343)).toBeLessThanOrEqual(1e-6);
  });

  it(titled("0-3", computed), () => {
    const flow = parseQuantity("flow", "20 gpm");
    if (!flow.ok) throw new Error(flow.reason);
    expect(Math.abs(inUnit("flow", flow.value, "l/s") - 1.2618039)).toBeLessThanOrEqual(1e-7);
  });
});

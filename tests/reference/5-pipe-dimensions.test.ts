import { describe, expect, it } from "vitest";
import { velocity_mps } from "../../src/core/hydraulics/pipe-loss.ts";
import { ratingAt, ratingByWall_psi, ratingOf } from "../../src/core/hydraulics/pipe-rating.ts";
import { pipeSizes } from "../../src/core/hydraulics/pipe-sizes.ts";
import { inUnit } from "../../src/core/units.ts";
import { type Source, titled } from "./source.ts";

/* Calculation handbook, section 5. */

const d1785: Source = { read: "ASTM D1785 as reproduced in two public tables" };
const d2241: Source = { read: "ASTM D2241, table of average walls" };

function sizeNamed(name: string) {
  const size = pipeSizes.find((each) => each.size === name);
  if (size === undefined) throw new Error(`no size ${name}`);
  return size;
}

const psiOf = (size: string) => inUnit("pressure", ratingOf(size) ?? 0, "psi");

describe("5.1 PVC Schedule 40", () => {
  /** Least walls, in. */
  const least: readonly (readonly [size: string, wall_in: number, psi: number])[] = [
    ["0.5in", 0.109, 600],
    ["0.75in", 0.113, 480],
    ["1in", 0.133, 450],
    ["1.25in", 0.14, 370],
    ["1.5in", 0.145, 330],
    ["2in", 0.154, 280],
    ["2.5in", 0.203, 300],
    ["3in", 0.216, 260],
    ["4in", 0.237, 220],
  ];

  it(
    titled(
      "5-1 2 in: outside 60.325 mm, least wall 3.9116 mm, 52.5018 mm between them; the average bore is narrower",
      d1785,
    ),
    () => {
      const { outside_mm, inside_mm } = sizeNamed("pvc-40-2in");
      expect(outside_mm).toBe(60.325);
      expect(Math.abs(outside_mm - 2 * 3.9116 - 52.5018)).toBeLessThan(1e-4);
      expect(Math.abs(inside_mm - 2.049 * 25.4)).toBeLessThan(1e-9);
    },
  );

  it(titled("5-2 limits of the outside diameter, 1/2 in and 4 in, hold the table's", d1785), () => {
    expect(sizeNamed("pvc-40-0.5in").outside_mm).toBeGreaterThan(21.24);
    expect(sizeNamed("pvc-40-0.5in").outside_mm).toBeLessThan(21.44);
    expect(sizeNamed("pvc-40-4in").outside_mm).toBeGreaterThan(114.07);
    expect(sizeNamed("pvc-40-4in").outside_mm).toBeLessThan(114.53);
  });

  it(titled("5-3 ratings as printed are 2 S / (OD/t - 1) with S 2000 psi, rounded to 10 psi", d1785), () => {
    for (const [size, wall_in, psi] of least) {
      const { outside_mm } = sizeNamed(`pvc-40-${size}`);
      expect(Math.round(ratingByWall_psi(outside_mm, wall_in * 25.4) / 10) * 10).toBe(psi);
      expect(Math.abs(psiOf(`pvc-40-${size}`) - psi)).toBeLessThan(1e-9);
    }
  });

  it(titled("bores are narrower than by least walls, and walls thicker", d1785), () => {
    for (const [size, wall_in] of least) {
      const { outside_mm, inside_mm } = sizeNamed(`pvc-40-${size}`);
      const wall_mm = (outside_mm - inside_mm) / 2;
      expect(wall_mm / (wall_in * 25.4)).toBeGreaterThan(1);
      expect(wall_mm / (wall_in * 25.4)).toBeLessThan(1.07);
    }
  });
});

describe("5.2 PVC SDR 21 and 26", () => {
  it(titled("5-4 ratings are 2 S / (SDR - 1): 200 and 160 psi", d2241), () => {
    expect(ratingByWall_psi(21, 1)).toBe(200);
    expect(ratingByWall_psi(26, 1)).toBe(160);
    expect(Math.abs(psiOf("pvc-sdr21-2in") - 200)).toBeLessThan(1e-9);
    expect(Math.abs(psiOf("pvc-sdr26-2in") - 160)).toBeLessThan(1e-9);
  });

  it(
    titled("at 140 F SDR 21 stands 44 psi, at 73 F all of its 200", { read: "a derating factor of 0.22 at 140 F" }),
    () => {
      const at = (fahrenheit: number) =>
        inUnit("pressure", ratingAt("pvc-sdr21-2in", (fahrenheit - 32) / 1.8) ?? 0, "psi");
      expect(Math.abs(at(140) - 44)).toBeLessThan(1e-9);
      expect(Math.abs(at(73) - 200)).toBeLessThan(1e-9);
      expect(Math.abs(at(50) - 200)).toBeLessThan(1e-9);
      expect(at(141)).toBe(0);
    },
  );
});

describe("5.3 metric pipe", () => {
  it(
    titled("PN 6 stands 6.0, 4.8, 3.4, 2.3 and 1.3 bar at 20 to 60 C", { read: "a derating page for metric PVC-U" }),
    () => {
      const bars = [20, 30, 40, 50, 60].map((celsius) => (ratingAt("pvc-pn6-50mm", celsius) ?? 0) / 100);
      expect(bars.map((bar) => Math.round(bar * 1e9) / 1e9)).toEqual([6, 4.8, 3.4, 2.3, 1.3]);
    },
  );

  it(
    titled("6 bar walls of DIN 8062: 1.8, 1.8, 1.9, 2.2, 2.7 and 3.2 mm", { read: "DIN 8062 uPVC wall table" }),
    () => {
      const walls_mm = [40, 50, 63, 75, 90, 110].map((nominal) => {
        const { outside_mm, inside_mm } = sizeNamed(`pvc-pn6-${nominal}mm`);
        return Math.round((outside_mm - inside_mm) * 50) / 100;
      });
      expect(walls_mm).toEqual([1.8, 1.8, 1.9, 2.2, 2.7, 3.2]);
    },
  );
});

describe("5.4 contents", () => {
  it(
    titled("5-5 a metre of 15.24 mm tube and of 2 in. Schedule 40 by its least wall", { computed: "geometry" }),
    () => {
      const litres = (inside_mm: number) => 1 / velocity_mps(inside_mm, 1);
      expect(Math.abs(litres(15.24) - 0.1824147)).toBeLessThan(1e-6);
      expect(Math.abs(litres(52.5018) / 2.164901 - 1)).toBeLessThan(1e-6);
    },
  );
});

it("every size of the tables has a rating, and one of one's own has none", () => {
  expect(pipeSizes.filter(({ size }) => ratingOf(size) === null)).toEqual([]);
  expect(ratingOf("my-own-pipe")).toBeNull();
});

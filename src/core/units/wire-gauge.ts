/**
 * US steel wire gauge (Washburn & Moen) to bare diameter. Not the American Wire Gauge of electric cable: No. 10 differs by 75 % in area.
 * Inches as read in three independent gauge tables; 12.5 is a table entry (0.099 in, ASTM A854/A854M), since half-way between 12 and 13 is 1 % low in area.
 */
const inchesByGauge: ReadonlyMap<number, number> = new Map([
  [9, 0.1483],
  [10, 0.135],
  [11, 0.1205],
  [12, 0.1055],
  [12.5, 0.099],
  [13, 0.0915],
  [14, 0.08],
  [15, 0.072],
  [16, 0.0625],
]);

/** Gauge numbers of the table, thickest wire first. */
export const wireGauges: readonly number[] = [...inchesByGauge.keys()];

/** Diameter of a gauge in millimetres, or null for a gauge the table has not got. */
export function gaugeDiameter_mm(gauge: number): number | null {
  const inches = inchesByGauge.get(gauge);
  return inches === undefined ? null : tenThousandthsOfAnInch_mm(inches);
}

/** The gauge that has this diameter (to a ten-thousandth of a millimetre), or null. */
export function gaugeOfDiameter(diameter_mm: number): number | null {
  for (const [gauge, inches] of inchesByGauge) {
    if (Math.abs(tenThousandthsOfAnInch_mm(inches) - diameter_mm) < 1e-4) return gauge;
  }
  return null;
}

function tenThousandthsOfAnInch_mm(inches: number): number {
  return (Math.round(inches * 10_000) * 254) / 100_000;
}

import * as f from "./factors.ts";
import type { QuantityKind, UnitSystem } from "./kind.ts";
import { gaugeOfDiameter } from "./wire-gauge.ts";

interface Shown {
  readonly symbol: string;
  readonly factor: f.Factor;
  /** Most decimals that mean something for this unit; trailing zeros are dropped. */
  readonly decimals: number;
}

/** Smallest size (SI) from which a unit is used; the first that fits is taken. */
type Choice = readonly (readonly [from: number, shown: Shown])[];

const unit = (symbol: string, factor: f.Factor, decimals: number): Shown => ({ symbol, factor, decimals });
const always = (shown: Shown): Choice => [[0, shown]];

const metric: Readonly<Record<QuantityKind, Choice>> = {
  length: [
    [10_000, unit("km", f.thousand, 2)],
    [1, unit("m", f.one, 2)],
    [0, unit("m", f.one, 3)],
  ],
  area: [
    [1000, unit("ha", f.hectare_m2, 3)],
    [0, unit("m²", f.one, 1)],
  ],
  diameter: always(unit("mm", f.one, 3)),
  angle: always(unit("°", f.one, 2)),
  flow: [
    [1000, unit("m³/h", f.thousand, 3)],
    [0, unit("L/h", f.one, 2)],
  ],
  volume: [
    [1000, unit("m³", f.thousand, 2)],
    [0.5, unit("L", f.one, 2)],
    // What is caught in a cup; nothing at all is no litres.
    [1e-9, unit("mL", f.thousandth, 0)],
    [0, unit("L", f.one, 2)],
  ],
  mass: [
    [1, unit("kg", f.one, 2)],
    [0, unit("g", f.thousandth, 0)],
  ],
  ratio: always(unit("%", f.hundredth, 2)),
  pressure: always(unit("kPa", f.one, 1)),
  time: [
    [1, unit("h", f.one, 2)],
    [2 / 60, unit("min", f.minute_h, 1)],
    // A bucket that fills, a valve that closes; no time at all is no minutes.
    [1e-9, unit("s", f.second_h, 1)],
    [0, unit("min", f.minute_h, 1)],
  ],
  force: [
    [10_000, unit("kN", f.thousand, 2)],
    [100, unit("N", f.one, 0)],
    [0, unit("N", f.one, 1)],
  ],
  temperature: always(unit("°C", f.one, 1)),
  earth: [
    [0.1, unit("m³", f.one, 2)],
    [0, unit("m³", f.one, 3)],
  ],
  speed: always(unit("m/s", f.one, 2)),
  depth: always(unit("mm", f.one, 1)),
};

/** What differs from metric where pressures are wanted otherwise. */
const pressures: Readonly<Record<UnitSystem, Choice>> = {
  metric: metric.pressure,
  us: always(unit("psi", f.psi_kpa, 1)),
  "metric-bar": always(unit("bar", f.bar_kpa, 2)),
  "metric-head": always(unit("m", f.metreHead_kpa, 1)),
};

const us: Readonly<Record<QuantityKind, Choice>> = {
  length: [
    [16_093.44, unit("mi", f.mile_m, 2)],
    [0.3048, unit("ft", f.foot_m, 2)],
    [1e-9, unit("in", f.inch_m, 2)],
    // No length at all is no feet, not no inches.
    [0, unit("ft", f.foot_m, 2)],
  ],
  area: [
    [404.68564224, unit("acres", f.acre_m2, 3)],
    [0, unit("ft²", f.squareFoot_m2, 1)],
  ],
  diameter: always(unit("in", f.inMillimetres(f.inch_m), 4)),
  angle: metric.angle,
  flow: [
    [227.12470704, unit("gal/min", f.gallonPerMinute_lph, 2)],
    [0, unit("gal/h", f.gallon_l, 3)],
  ],
  volume: [
    [1000 * 3.785411784, unit("gal", f.gallon_l, 0)],
    [0.3785411784, unit("gal", f.gallon_l, 2)],
    [1e-9, unit("fl oz", f.fluidOunce_l, 1)],
    [0, unit("gal", f.gallon_l, 2)],
  ],
  mass: [
    [0.45359237, unit("lb", f.pound_kg, 2)],
    [0, unit("oz", f.ounce_kg, 2)],
  ],
  ratio: metric.ratio,
  pressure: pressures.us,
  time: metric.time,
  force: [
    [100 * 4.4482216152605, unit("lbf", f.poundForce_n, 0)],
    [0, unit("lbf", f.poundForce_n, 1)],
  ],
  temperature: always(unit("°F", f.fahrenheit_c, 1)),
  earth: [
    [0.1 * 0.764554857984, unit("yd³", f.cubicYard_m3, 2)],
    [0, unit("yd³", f.cubicYard_m3, 3)],
  ],
  speed: always(unit("ft/s", f.foot_m, 2)),
  depth: always(unit("in", f.inMillimetres(f.inch_m), 2)),
};

/**
 * An SI value of a kind with its unit, for people: "2.4 m", "8 ft", "0.42 ha", "24°", "2 %", "13 ga". Thousands are grouped ("1,386 m").
 * Without `decimals` as many as mean something, trailing zeros dropped; with it exactly that many (for columns).
 * What it writes, `parseQuantity` reads back to within half of the last decimal. A value that is not finite reads "not known".
 */
export function formatQuantity(kind: QuantityKind, value: number, units: UnitSystem, decimals?: number): string {
  if (!Number.isFinite(value)) return "not known";
  if (kind === "diameter" && units === "us" && decimals === undefined) {
    const gauge = gaugeOfDiameter(value);
    if (gauge !== null) return `${gauge} ga`;
  }
  const choice = kind === "pressure" ? pressures[units] : units === "us" ? us[kind] : metric[kind];
  const shown = shownUnit(choice, value);
  const number = grouped(f.fromSi(value, shown.factor), shown.decimals, decimals);
  return shown.symbol === "°" ? `${number}°` : `${number} ${shown.symbol}`;
}

function shownUnit(choice: Choice, value: number): Shown {
  // A hair below the limit counts as the limit, so that 12 in reads 1 ft whichever way it was computed.
  const size = Math.abs(value) * (1 + 1e-9);
  const found = choice.find(([from]) => size >= from);
  if (found === undefined) throw new Error("every kind has a unit for small values");
  return found[1];
}

function grouped(amount: number, most: number, exact: number | undefined): string {
  const fixed = Math.abs(amount) < 1e15 ? amount.toFixed(exact ?? most) : String(amount);
  if (fixed.includes("e")) return fixed;
  const trimmed = exact === undefined && fixed.includes(".") ? fixed.replace(/\.?0+$/, "") : fixed;
  const [whole = "", decimals] = trimmed.split(".");
  const spaced = whole.replace(/\B(?=(\d{3})+$)/g, ",");
  const text = decimals === undefined ? spaced : `${spaced}.${decimals}`;
  return /[1-9]/.test(text) ? text : text.replace("-", "");
}

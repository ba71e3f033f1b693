/**
 * Exact conversion factors as whole-number fractions, so that 8 ft becomes 2.4384 m and not 2.4384000000000001.
 * Definitions from memory of NIST SP 811 unless a line says otherwise.
 */
export interface Factor {
  readonly times: number;
  readonly over: number;
  /** Where the scale of the unit begins, for temperatures: 32 °F is nothing in degrees Celsius. */
  readonly less?: number;
}

const factor = (times: number, over = 1): Factor => ({ times, over });

/** An amount in a unit, in the SI unit of the kind. */
export function toSi(amount: number, { times, over, less = 0 }: Factor): number {
  return ((amount - less) * times) / over;
}

/** An SI value in a unit. */
export function fromSi(value: number, { times, over, less = 0 }: Factor): number {
  return (value * over) / times + less;
}

export const one = factor(1);
export const hundredth = factor(1, 100);
export const thousandth = factor(1, 1000);
export const thousand = factor(1000);

// Lengths in metres. International foot; the US survey foot (1200/3937 m) belongs to old State Plane files, never to rows.
export const inch_m = factor(254, 10_000);
export const foot_m = factor(3048, 10_000);
export const yard_m = factor(9144, 10_000);
export const mile_m = factor(1_609_344, 1000);
export const surveyFoot_m = factor(1200, 3937);

// Areas in square metres: an acre is 43,560 square feet.
export const acre_m2 = factor(40_468_564_224, 10_000_000);
export const hectare_m2 = factor(10_000);
export const squareFoot_m2 = factor(9_290_304, 100_000_000);
export const squareYard_m2 = factor(83_612_736, 100_000_000);

// Volumes in litres: a US gallon is 231 cubic inches and holds 128 fluid ounces.
export const gallon_l = factor(3_785_411_784, 1_000_000_000);
export const fluidOunce_l = factor(3_785_411_784, 128_000_000_000);
export const imperialGallon_l = factor(454_609, 100_000);
export const cubicFoot_l = factor(28_316_846_592, 1_000_000_000);

// Earth in cubic metres: a yard is 0.9144 m.
export const cubicYard_m3 = factor(764_554_857_984, 1_000_000_000_000);
export const cubicFoot_m3 = factor(28_316_846_592, 1_000_000_000_000);

// Flows in litres per hour.
export const litrePerMinute_lph = factor(60);
export const litrePerSecond_lph = factor(3600);
export const gallonPerMinute_lph = factor(3_785_411_784 * 60, 1_000_000_000);
export const imperialGallonPerMinute_lph = factor(454_609 * 60, 100_000);

// Masses in kilograms.
export const pound_kg = factor(45_359_237, 100_000_000);
export const ounce_kg = factor(45_359_237, 1_600_000_000);
export const shortTon_kg = factor(90_718_474, 100_000);

// Pressures in kilopascals: psi is the pound-force (4.4482216152605 N) on a square inch (6.4516 cm2).
export const psi_kpa = factor(44_482_216_152_605, 6_451_600_000_000);
/** The same on a square foot (0.09290304 m2). */
export const psf_kpa = factor(44_482_216_152_605, 929_030_400_000_000);
export const bar_kpa = factor(100);
/** Metre of water at 1000 kg/m3 and g = 9.80665 m/s2 (g read in USU BIE 5110/6110 lecture notes, 2004). */
export const metreHead_kpa = factor(980_665, 100_000);
export const footHead_kpa = factor(980_665 * 3048, 1_000_000_000);

// Forces in newtons: a pound-force is a pound times 9.80665 m/s2, a kilogram-force a kilogram times the same.
export const poundForce_n = factor(44_482_216_152_605, 10_000_000_000_000);
export const kilogramForce_n = factor(980_665, 100_000);

// Temperatures in degrees Celsius.
export const fahrenheit_c: Factor = { times: 5, over: 9, less: 32 };
export const kelvin_c: Factor = { times: 1, over: 1, less: 273.15 };

// Angles in degrees.
export const radian_deg = factor(180, Math.PI);
export const gon_deg = factor(9, 10);
export const arcMinute_deg = factor(1, 60);
export const arcSecond_deg = factor(1, 3600);

// Times in hours.
export const minute_h = factor(1, 60);
export const second_h = factor(1, 3600);
export const day_h = factor(24);
export const week_h = factor(168);

/** The same length unit for diameters, which are in millimetres. */
export function inMillimetres({ times, over }: Factor): Factor {
  return over % 1000 === 0 ? factor(times, over / 1000) : factor(times * 1000, over);
}

/** The same flow unit per hour instead of per minute, and so on. */
export function slowedBy(fast: Factor, ratio: number): Factor {
  return factor(fast.times, fast.over * ratio);
}

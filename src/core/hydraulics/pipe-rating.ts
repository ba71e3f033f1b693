/** Highest pressure of PVC by ASTM D1785, Schedule 40, psi at 73 F, as printed (calculation handbook, section 5.1). */
const schedule40_psi: Readonly<Record<string, number>> = {
  "0.5in": 600,
  "0.75in": 480,
  "1in": 450,
  "1.25in": 370,
  "1.5in": 330,
  "2in": 280,
  "2.5in": 300,
  "3in": 260,
  "4in": 220,
};

/** What is left of a rating at a temperature, Celsius; straight between, none past the last. */
type Derating = readonly (readonly [temperature_c: number, share: number])[];

/** PVC by ASTM; 140 F was read, the others are from memory (calculation handbook, section 5.2). */
const pvcInch: Derating = (
  [
    [73, 1],
    [80, 0.88],
    [90, 0.75],
    [100, 0.62],
    [110, 0.5],
    [120, 0.4],
    [130, 0.3],
    [140, 0.22],
  ] as const
).map(([fahrenheit, share]) => [(fahrenheit - 32) / 1.8, share]);
/** Metric PVC: 6.0, 4.8, 3.4, 2.3 and 1.3 bar of 6 (calculation handbook, section 5.3). */
const pvcMetric: Derating = [
  [20, 1],
  [30, 4.8 / 6],
  [40, 3.4 / 6],
  [50, 2.3 / 6],
  [60, 1.3 / 6],
];
/** PE 100 by ISO 4427, from memory. */
const pe: Derating = [
  [20, 1],
  [30, 0.87],
  [40, 0.74],
];

interface Family {
  readonly prefix: string;
  rating_kpa(size: string): number | null;
  readonly derating: Derating;
}

const psi_kpa = 6.894757293168;

/** Class names say SDR 21 and 26 in psi (2 S / (SDR - 1), S 2000 psi), metric ones the bar. */
const families: readonly Family[] = [
  {
    prefix: "pvc-40-",
    rating_kpa: (size) => {
      const psi = schedule40_psi[size];
      return psi === undefined ? null : psi * psi_kpa;
    },
    derating: pvcInch,
  },
  { prefix: "pvc-sdr21-", rating_kpa: () => 200 * psi_kpa, derating: pvcInch },
  { prefix: "pvc-sdr26-", rating_kpa: () => 160 * psi_kpa, derating: pvcInch },
  { prefix: "pvc-pn10-", rating_kpa: () => 1000, derating: pvcMetric },
  { prefix: "pvc-pn6-", rating_kpa: () => 600, derating: pvcMetric },
  { prefix: "pe100-sdr17-", rating_kpa: () => 1000, derating: pe },
];

function familyOf(size: string): Family | undefined {
  return families.find(({ prefix }) => size.startsWith(prefix));
}

/** Highest pressure, kPa, that a size of the pipe tables is sold for, at 23 C (inch PVC) or 20 C (metric); null for a size of one's own. */
export function ratingOf(size: string): number | null {
  const family = familyOf(size);
  return family?.rating_kpa(size.slice(family.prefix.length)) ?? null;
}

/** Highest pressure, kPa, of a size of the pipe tables with water of a temperature, Celsius; null for a size of one's own. */
export function ratingAt(size: string, temperature_c: number): number | null {
  const rating_kpa = ratingOf(size);
  const derating = familyOf(size)?.derating;
  return rating_kpa === null || derating === undefined ? null : rating_kpa * shareAt(derating, temperature_c);
}

function shareAt(derating: Derating, temperature_c: number): number {
  let [cooler_c, more] = derating[0] ?? [0, 1];
  if (temperature_c <= cooler_c) return more;
  for (const [warmer_c, less] of derating) {
    if (temperature_c <= warmer_c) {
      return warmer_c === cooler_c ? less : more + ((less - more) * (temperature_c - cooler_c)) / (warmer_c - cooler_c);
    }
    cooler_c = warmer_c;
    more = less;
  }
  return 0;
}

/** Rating of PVC by its least wall, psi: 2 S / (OD / t - 1), S 2000 psi. 2 in Schedule 40: 277 (printed rounded, 280). */
export function ratingByWall_psi(outside_mm: number, wall_mm: number): number {
  return (2 * 2000) / (outside_mm / wall_mm - 1);
}

/** A hose as it is sold, by its two diameters. */
export interface HoseSize {
  readonly inside_mm: number;
  readonly outside_mm: number;
}

/** From .520 x .620 in to .820 x .940 in and 20 mm (calculation handbook, section 5.4). */
const hoseSizes: readonly HoseSize[] = [
  { inside_mm: 13.208, outside_mm: 15.748 },
  { inside_mm: 14.478, outside_mm: 17.018 },
  { inside_mm: 15.24, outside_mm: 17.78 },
  { inside_mm: 15.748, outside_mm: 18.034 },
  { inside_mm: 17.5, outside_mm: 20 },
  { inside_mm: 20.828, outside_mm: 23.876 },
];

/** Hoses wider by a twentieth at least, the narrowest first. */
export function widerHoses(inside_mm: number): readonly HoseSize[] {
  return hoseSizes.filter((each) => each.inside_mm > inside_mm * 1.05);
}

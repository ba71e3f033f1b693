/** A box in degrees. */
export interface LonLatBox {
  readonly west: number;
  readonly south: number;
  readonly east: number;
  readonly north: number;
}

/** What two boxes share; null when they lie apart. */
export function sharedBox(one: LonLatBox, other: LonLatBox): LonLatBox | null {
  const box = {
    west: Math.max(one.west, other.west),
    south: Math.max(one.south, other.south),
    east: Math.min(one.east, other.east),
    north: Math.min(one.north, other.north),
  };
  return box.west < box.east && box.south < box.north ? box : null;
}

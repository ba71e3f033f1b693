import type { WirePurpose } from "../project/project.ts";
import type { WireLoads } from "../trellis/loads.ts";
import type { HungWire } from "../trellis/trellis.ts";

export interface SideWire {
  readonly purpose: WirePurpose;
  readonly height_m: number;
  readonly count: number;
  readonly diameter_mm: number;
  readonly isMovable: boolean;
  /** Where posts hold it, from end support to end support; beyond the row's own stations where end posts lean out. */
  readonly supports_m: readonly number[];
  /** How far it goes down between each two supports at the tension set, true to scale. */
  readonly sags_m: readonly number[];
}

/** A wire of a row as its posts hold it. Sag goes with the square of the bay (calculation handbook 2.3). */
export function sideWire(
  { wire, height_m, reach_m }: HungWire,
  loads: WireLoads | undefined,
  linePosts_m: readonly number[],
  length_m: number,
): SideWire {
  const supports_m = [-reach_m, ...linePosts_m, length_m + reach_m];
  const { purpose, count, diameter_mm, isMovable } = wire;
  const perBay = loads === undefined || loads.bay_m === 0 ? 0 : loads.sag_m / loads.bay_m ** 2;
  return {
    purpose,
    height_m,
    count,
    diameter_mm,
    isMovable,
    supports_m,
    sags_m: supports_m.slice(1).map((to_m, i) => perBay * (to_m - Number(supports_m[i])) ** 2),
  };
}

/** Sag is drawn so many times as large as it is, as often as still keeps a wire clear of the next lower one and of the ground. */
const factors = [50, 20, 10, 5, 2];
/** Share of the room under a wire that its drawn sag may take. */
const roomShare = 0.6;

/** How many times larger than it is the sag of some wires is drawn; 1 where it is seen as it is. */
export function sagFactor(wires: readonly SideWire[]): number {
  const fits = wires.flatMap(({ height_m, sags_m }) => {
    const sag_m = Math.max(0, ...sags_m);
    const below_m = wires.reduce(
      (most, other) => (other.height_m < height_m ? Math.max(most, other.height_m) : most),
      0,
    );
    return sag_m === 0 ? [] : [(roomShare * (height_m - below_m)) / sag_m];
  });
  const most = Math.min(...fits);
  return fits.length === 0 ? 1 : (factors.find((factor) => factor <= most) ?? 1);
}

/** How far a wire is down at a station, m, true to scale; 0 at its supports and beyond them. A parabola in every bay. */
export function sagAt({ supports_m, sags_m }: SideWire, station_m: number): number {
  const i = supports_m.findIndex((each) => each > station_m) - 1;
  const [from_m, to_m, sag_m] = [supports_m[i], supports_m[i + 1], sags_m[i]];
  if (from_m === undefined || to_m === undefined || sag_m === undefined) return 0;
  const share = (station_m - from_m) / (to_m - from_m);
  return 4 * sag_m * share * (1 - share);
}

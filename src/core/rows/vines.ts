import type { RowSettings } from "../project/project.ts";

/**
 * Vines that a row holds: floor((L - 2e) / s + 1e-9) + 1, none when it is shorter than its two end gaps. All in metres.
 * Geometry; the 1e-9 keeps (4.8 - 1.2) / 0.9 = 3.9999999999999996 at four spacings.
 */
export function vineCount(length_m: number, endGap_m: number, vineSpacing_m: number): number {
  const room_m = length_m - 2 * endGap_m;
  return room_m < -1e-9 ? 0 : Math.floor(room_m / vineSpacing_m + 1e-9) + 1;
}

/** Where a row lies within its piece, and its vines; stations in metres from the start of the piece. */
export interface RowLayout {
  readonly from_m: number;
  readonly to_m: number;
  readonly firstVine_m: number;
  readonly vines: number;
  /** Number of the first vine on the grid that runs across rows, when vines are aligned. */
  readonly gridIndex: number;
}

/**
 * Lays a row into a piece of ground: to its last millimetre, to whole vine spacings, or to whole bays; null when rows end at whole
 * spacings and the piece holds none. `grid_m` is the station of any place of the grid across rows (used when vines are aligned).
 */
export function rowLayout(piece_m: number, settings: RowSettings, grid_m: number): RowLayout | null {
  const { endGap_m, vineSpacing_m, rowEnd } = settings;
  const isAligned = settings.vines === "aligned";
  const gridIndex = Math.ceil((endGap_m - grid_m) / vineSpacing_m - 1e-9);
  const firstOnGrid_m = grid_m + gridIndex * vineSpacing_m;
  const atMost = isAligned
    ? vineCount(piece_m - (firstOnGrid_m - endGap_m), endGap_m, vineSpacing_m)
    : vineCount(piece_m, endGap_m, vineSpacing_m);
  const vines = rowEnd === "bays" ? atMost - (atMost % settings.bay_vines) : atMost;
  const vines_m = Math.max(0, vines - 1) * vineSpacing_m;
  if (rowEnd === "all") {
    const firstVine_m = isAligned
      ? firstOnGrid_m
      : settings.vines === "from-start"
        ? endGap_m
        : (piece_m - vines_m) / 2;
    return { from_m: 0, to_m: piece_m, firstVine_m, vines, gridIndex };
  }
  if (vines === 0) return null;
  const row_m = 2 * endGap_m + vines_m;
  const leftover_m = Math.max(0, piece_m - row_m);
  const from_m = isAligned
    ? firstOnGrid_m - endGap_m
    : leftover_m * (settings.trim === "both" ? 0.5 : settings.trim === "start" ? 1 : 0);
  return { from_m, to_m: from_m + row_m, firstVine_m: from_m + endGap_m, vines, gridIndex };
}

/** Stations of the vines of a row of `vines`, without those that would stand in a gap. */
export function vineStations(
  firstVine_m: number,
  vines: number,
  vineSpacing_m: number,
  gaps: readonly (readonly [from_m: number, to_m: number])[],
): readonly number[] {
  const stations: number[] = [];
  for (let i = 0; i < vines; i++) {
    const station = firstVine_m + i * vineSpacing_m;
    if (!isInGap(station, gaps)) stations.push(station);
  }
  return stations;
}

/** True when the station lies within one of the gaps. */
export function isInGap(station_m: number, gaps: readonly (readonly [from_m: number, to_m: number])[]): boolean {
  return gaps.some(([from, to]) => station_m > from && station_m < to);
}

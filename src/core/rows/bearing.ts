import type { Finding } from "../finding.ts";
import type { BlockGround, Ground } from "../ground/ground.ts";
import { forEachEdge } from "../ground/outlines.ts";
import { gridBearing_deg, lineBearing_deg } from "../plane/bearing.ts";
import type { RowSettings } from "../project/project.ts";
import { allBearingsLocked, bearingEdgeMissing } from "./findings.ts";
import type { SweepPoint } from "./rows.ts";

export interface BlockBearing {
  /** True at the block's centre, in [0, 180). */
  readonly bearing_deg: number;
  readonly findings: readonly Finding[];
}

/**
 * The way along the rows that left, right, start and end are told by: northward, or eastward for rows nearer to east and west. As a
 * grid bearing in [-45, 135) less convergence, so that rows a hair either side of north or of east are numbered alike.
 */
export function rowDirection_deg(bearing_deg: number, ground: BlockGround): number {
  return (bearing_deg < 135 ? bearing_deg : bearing_deg - 180) - ground.convergence_deg;
}

/**
 * The bearing a block is planted at: given, taken from a drawn edge or the longest one, or the best of the sweep.
 * Findings: `rows/bearing-edge-missing`, `rows/all-bearings-locked`.
 */
export function blockBearing(
  ground: Ground,
  block: BlockGround,
  settings: RowSettings,
  best: () => SweepPoint | null,
): BlockBearing {
  const { bearing } = settings;
  const longest = () => lineBearing_deg(longestEdge_deg(block) + block.convergence_deg);
  switch (bearing.kind) {
    case "given":
      return { bearing_deg: lineBearing_deg(bearing.bearing_deg), findings: [] };
    case "best": {
      const point = best();
      if (point !== null) return { bearing_deg: point.bearing_deg, findings: [] };
      return { bearing_deg: longest(), findings: [allBearingsLocked(block.block)] };
    }
    case "edge": {
      if (bearing.edge === "longest") return { bearing_deg: longest(), findings: [] };
      const [edge] = ground.covered.get(bearing.edge) ?? [];
      if (edge === undefined) {
        return { bearing_deg: longest(), findings: [bearingEdgeMissing(block.block, bearing.edge)] };
      }
      const [px = 0, py = 0, qx = 0, qy = 0] = edge;
      return { bearing_deg: lineBearing_deg(gridBearing_deg(px, py, qx, qy) + block.convergence_deg), findings: [] };
    }
  }
}

/** Two edges this near in direction are one edge. */
const straight_deg = 1e-6;

/** Grid bearing of the longest straight run of edges around the block's ground. */
function longestEdge_deg(block: BlockGround): number {
  let best = { length_m: -1, bearing_deg: 0 };
  for (const { rings } of block.isDrawn ? block.areas : block.outlines) {
    let run = { length_m: 0, bearing_deg: -1 };
    const outerEnd = Number(rings.ringStart[1] ?? 0);
    forEachEdge(rings, (e, px, py, qx, qy) => {
      if (e >= outerEnd) return;
      const bearing_deg = gridBearing_deg(px, py, qx, qy);
      const length_m = Math.hypot(qx - px, qy - py);
      const isStraight = Math.abs(bearing_deg - run.bearing_deg) <= straight_deg;
      run = { length_m: isStraight ? run.length_m + length_m : length_m, bearing_deg };
      if (run.length_m > best.length_m + 1e-6) best = run;
    });
  }
  return best.bearing_deg;
}

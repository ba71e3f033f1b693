import type { Finding } from "../finding.ts";
import { edgeBearing_deg } from "../ground/edge-bearing.ts";
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
      const along = edgeBearing_deg(ground.covered.get(bearing.edge) ?? [], block.convergence_deg);
      if (along !== null) return { bearing_deg: along, findings: [] };
      return { bearing_deg: longest(), findings: [bearingEdgeMissing(block.block, bearing.edge)] };
    }
  }
}

/** Edges that turn less than this run on as one: coordinates of 7 decimals bend an edge of 50 m by about as much. */
const straight_deg = 0.02;

/** Grid bearing of the longest straight run of edges around the block's ground, from where the run begins to where it ends. */
function longestEdge_deg(block: BlockGround): number {
  let best = { length_m: -1, bearing_deg: 0 };
  for (const { rings } of block.isDrawn ? block.areas : block.outlines) {
    const outerEnd = Number(rings.ringStart[1] ?? 0);
    const edges: (readonly [px: number, py: number, qx: number, qy: number])[] = [];
    forEachEdge(rings, (e, ...ends) => {
      if (e < outerEnd) edges.push(ends);
    });
    for (const [px, py, qx, qy] of straightRuns(edges)) {
      const length_m = Math.hypot(qx - px, qy - py);
      if (length_m > best.length_m + 1e-6) best = { length_m, bearing_deg: gridBearing_deg(px, py, qx, qy) };
    }
  }
  return best.bearing_deg;
}

type Edge = readonly [px: number, py: number, qx: number, qy: number];

/** Edges of a ring with those that run straight on made one, over the ring's first point too. */
function straightRuns(edges: readonly Edge[]): readonly Edge[] {
  const corner = edges.findIndex((edge, i) => !runsOn(edges.at(i - 1) ?? edge, edge));
  const runs: Edge[] = [];
  for (const edge of [...edges.slice(corner), ...edges.slice(0, corner)]) {
    const last = runs.at(-1);
    if (last !== undefined && runsOn(last, edge)) runs[runs.length - 1] = [last[0], last[1], edge[2], edge[3]];
    else runs.push(edge);
  }
  return runs;
}

function runsOn([px, py, qx, qy]: Edge, [rx, ry, sx, sy]: Edge): boolean {
  const turn_deg = Math.abs(gridBearing_deg(px, py, qx, qy) - gridBearing_deg(rx, ry, sx, sy));
  return Math.min(turn_deg, 180 - turn_deg) <= straight_deg;
}

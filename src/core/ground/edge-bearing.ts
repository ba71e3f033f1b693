import { gridBearing_deg, lineBearing_deg } from "../plane/bearing.ts";

/**
 * True bearing in [0, 180) of the longest of the outline's edges along a drawn edge, plane segments px, py, qx, qy, at a place with this
 * convergence; null when there is none.
 */
export function edgeBearing_deg(edges: readonly Float64Array[], convergence_deg: number): number | null {
  const length = ([px = 0, py = 0, qx = 0, qy = 0]: Float64Array) => Math.hypot(qx - px, qy - py);
  const longest = edges.reduce<Float64Array | null>(
    (best, edge) => (best && length(best) >= length(edge) ? best : edge),
    null,
  );
  if (longest === null) return null;
  const [px = 0, py = 0, qx = 0, qy = 0] = longest;
  return lineBearing_deg(gridBearing_deg(px, py, qx, qy) + convergence_deg);
}

import { arcPoints, bulgedPoints, type Corner, ellipsePoints } from "./curves.ts";
import type { Drawn } from "./drawn.ts";
import { type DxfRecord, numberIn } from "./dxf-groups.ts";

/** Boundaries of a hatched area. */
export interface HatchRings {
  readonly rings: readonly (readonly Drawn[])[];
  readonly curves: number;
  /** False when a boundary is of a kind that is not read (splines), or is cut off. */
  readonly isWhole: boolean;
}

/**
 * The boundary paths of a HATCH (group 91 counts them): polylines with bulges, or edges that are lines, arcs and ellipses, end to end. Text boxes
 * (flag 8) are left out. Source: DXF reference, "boundary path data".
 */
export function hatchRings({ groups }: DxfRecord): HatchRings {
  let at = groups.findIndex(({ code }) => code === 91);
  if (at < 0) return { rings: [], curves: 0, isWhole: false };
  const height = heightOf(groups.slice(0, at));
  const paths = numberIn(groups[at]?.value ?? "");
  const rings: (readonly Drawn[])[] = [];
  let curves = 0;
  at++;
  /** The value of the next group, when it is of a code. */
  const taken = (code: number): number | null => {
    const group = groups[at];
    if (group?.code !== code) return null;
    at++;
    return numberIn(group.value);
  };
  for (let path = 0; path < paths; path++) {
    while (at < groups.length && groups[at]?.code !== 92) at++;
    const flag = taken(92);
    if (flag === null) return { rings, curves, isWhole: false };
    const ring = (flag & 2) === 2 ? polylinePath() : edgePath();
    if (ring === null) return { rings, curves, isWhole: false };
    if ((flag & 8) === 0 && ring.length > 2) rings.push(ring);
  }
  return { rings, curves, isWhole: true };

  function polylinePath(): readonly Drawn[] | null {
    taken(72);
    taken(73);
    const count = taken(93);
    if (count === null) return null;
    const corners: Corner[] = [];
    for (let i = 0; i < count; i++) {
      const [x, y] = [taken(10), taken(20)];
      if (x === null || y === null) return null;
      corners.push({ at: [x, y, height], bulge: taken(42) ?? 0 });
    }
    curves += corners.filter(({ bulge }) => bulge !== 0).length;
    return opened(bulgedPoints(corners, true));
  }

  function edgePath(): readonly Drawn[] | null {
    const count = taken(93);
    if (count === null) return null;
    const points: Drawn[] = [];
    for (let i = 0; i < count; i++) {
      const edge = edgePoints(taken(72));
      if (edge === null) return null;
      points.push(...edge.slice(0, -1));
    }
    return points;
  }

  function edgePoints(kind: number | null): readonly Drawn[] | null {
    if (kind === 1) {
      const [x0, y0, x1, y1] = [taken(10), taken(20), taken(11), taken(21)];
      if (x0 === null || y0 === null || x1 === null || y1 === null) return null;
      return [
        [x0, y0, height],
        [x1, y1, height],
      ];
    }
    if (kind !== 2 && kind !== 3) return null;
    const [x, y] = [taken(10), taken(20)];
    const axis = kind === 3 ? ([taken(11), taken(21)] as const) : null;
    const [size, from, to] = [taken(40), taken(50), taken(51)];
    const isLeft = taken(73) !== 0;
    if (x === null || y === null || size === null || from === null || to === null) return null;
    curves++;
    // Clockwise edges count their angles clockwise.
    const sign = isLeft ? 1 : -1;
    const [start, turn] = [(sign * from * Math.PI) / 180, (sign * (to - from) * Math.PI) / 180];
    if (axis === null) return arcPoints([x, y, height], size, start, turn);
    const [ax, ay] = axis;
    return ax === null || ay === null ? null : ellipsePoints([x, y, height], [ax, ay], size, start, turn);
  }
}

function heightOf(groups: DxfRecord["groups"]): number | null {
  const z = numberIn(groups.find(({ code }) => code === 30)?.value ?? "0");
  return z === 0 ? null : z;
}

/** A ring without its first point once more. */
function opened(ring: readonly Drawn[]): readonly Drawn[] {
  const [first, last] = [ring[0], ring.at(-1)];
  const isRepeated = first !== undefined && last !== undefined && first[0] === last[0] && first[1] === last[1];
  return isRepeated ? ring.slice(0, -1) : ring;
}

import type { Profile } from "./trench.ts";

/** All profiles as one tree: a place where branches meet is one node. */
export interface LineTree {
  /** Node of every station, by branch. */
  readonly nodes: readonly Int32Array[];
  /** The branch and the station that a node was first met at. */
  readonly branch: Int32Array;
  readonly station: Int32Array;
  /** Pieces of pipe between two nodes: the ends, the point of the route that their leg leads to, and the length along the ground and in plan. */
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly leg: Int32Array;
  readonly length_m: Float64Array;
  readonly level_m: Float64Array;
  /** For every node the pieces that end there. */
  readonly pieces: readonly (readonly number[])[];
}

/** Branches come after those they leave, so the node they begin at is there already. */
export function lineTree(profiles: readonly Profile[]): LineTree {
  const atPoint = new Map<number, number>();
  const branch: number[] = [];
  const station: number[] = [];
  const from: number[] = [];
  const to: number[] = [];
  const leg: number[] = [];
  const length_m: number[] = [];
  const level_m: number[] = [];
  const nodes = profiles.map(({ point, station_m, slopeStation_m }, b) => {
    const own = new Int32Array(point.length);
    const legs = legsOf(point);
    point.forEach((each, i) => {
      const known = each < 0 ? undefined : atPoint.get(each);
      const node = known ?? branch.push(b) - 1;
      if (known === undefined) station.push(i);
      if (each >= 0) atPoint.set(each, node);
      own[i] = node;
      if (i === 0) return;
      from.push(Number(own[i - 1]));
      to.push(node);
      leg.push(Number(legs[i]));
      length_m.push(Number(slopeStation_m[i]) - Number(slopeStation_m[i - 1]));
      level_m.push(Number(station_m[i]) - Number(station_m[i - 1]));
    });
    return own;
  });
  const pieces: number[][] = branch.map(() => []);
  from.forEach((node, piece) => {
    pieces[node]?.push(piece);
    pieces[to[piece] ?? -1]?.push(piece);
  });
  return {
    nodes,
    branch: Int32Array.from(branch),
    station: Int32Array.from(station),
    from: Int32Array.from(from),
    to: Int32Array.from(to),
    leg: Int32Array.from(leg),
    length_m: Float64Array.from(length_m),
    level_m: Float64Array.from(level_m),
    pieces,
  };
}

/** The tree with those of its pieces only that lie on some legs; its nodes are the same. */
export function partOf(tree: LineTree, isIn: (leg: number) => boolean): LineTree {
  return { ...tree, pieces: tree.pieces.map((own) => own.filter((piece) => isIn(Number(tree.leg[piece])))) };
}

/** For every station the next point of the route at or after it. */
function legsOf(point: Int32Array): Int32Array {
  const legs = Int32Array.from(point);
  for (let i = legs.length - 2; i >= 0; i--) if (Number(legs[i]) < 0) legs[i] = Number(legs[i + 1]);
  return legs;
}

/** A value of every node, taken from the profiles. */
export function onNodes(
  { branch, station }: LineTree,
  profiles: readonly Profile[],
  of: (profile: Profile) => Float64Array,
): Float64Array {
  return Float64Array.from(branch, (b, node) => {
    const profile = profiles[b];
    return profile === undefined ? Number.NaN : Number(of(profile)[station[node] ?? 0]);
  });
}

/** The node at the other end of a piece. */
export function otherEnd({ from, to }: Pick<LineTree, "from" | "to">, piece: number, node: number): number {
  return from[piece] === node ? Number(to[piece]) : Number(from[piece]);
}

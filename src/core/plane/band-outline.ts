/** Straight pieces in the plane and how far planting keeps from each: x1, y1, x2, y2 a piece; a point is a piece of length 0. */
export interface BandSet {
  readonly xy: Float64Array;
  readonly distance_m: Float64Array;
}

/** Furthest that a drawn arc may stand off the true one. */
export const arcTolerance_m = 0.001;

/** Rectangles reach this far past the ends of their piece, so that neighbours overlap and rounding opens no gap; at 3 m off this is 0.2 µm too far. */
const overlap_m = 0.001;

/**
 * Polygons whose union is every point within its distance of a piece (the union of the stadiums), as lists of x, y pairs in metres,
 * all counter-clockwise. Straight sides are exact; arcs stand off by at most `arcTolerance_m` and hold the true area.
 *
 * A stadium is a rectangle and a half disc at each end. Where pieces meet, only the one with the largest distance carries a cap, and of
 * that only the part which no piece with the same distance covers from its side: everything else of the discs lies in a rectangle
 * or in the cap of a nearer joint. This leaves about a tenth of the arc points of whole stadiums on a parcel's outline.
 */
export function bandOutlines(bands: BandSet): Float64Array[] {
  const outlines: Float64Array[] = [];
  for (const joint of joints(bands)) outlines.push(...cap(joint));
  for (let i = 0; i < bands.distance_m.length; i++) {
    const rectangle = rectangleOf(pieceOf(bands, i));
    if (rectangle !== null) outlines.push(rectangle);
  }
  return outlines;
}

interface Piece {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
  readonly distance_m: number;
}

function pieceOf({ xy, distance_m }: BandSet, i: number): Piece {
  return {
    x1: xy[4 * i] ?? 0,
    y1: xy[4 * i + 1] ?? 0,
    x2: xy[4 * i + 2] ?? 0,
    y2: xy[4 * i + 3] ?? 0,
    distance_m: distance_m[i] ?? 0,
  };
}

/** Where pieces end: the largest distance, and the directions in which the pieces with that distance leave. */
interface Joint {
  readonly x: number;
  readonly y: number;
  readonly distance_m: number;
  /** Radians; null for a piece of length 0, which leaves nowhere. */
  readonly leaving: (number | null)[];
}

function joints(bands: BandSet): Iterable<Joint> {
  const found = new Map<string, Joint>();
  const meet = (x: number, y: number, distance_m: number, leaving: number | null): void => {
    const key = `${x},${y}`;
    const joint = found.get(key);
    if (joint === undefined || joint.distance_m < distance_m) {
      found.set(key, { x, y, distance_m, leaving: [leaving] });
    } else if (joint.distance_m === distance_m) joint.leaving.push(leaving);
  };
  for (let i = 0; i < bands.distance_m.length; i++) {
    const { x1, y1, x2, y2, distance_m } = pieceOf(bands, i);
    if (distance_m <= 0) continue;
    if (x1 === x2 && y1 === y2) meet(x1, y1, distance_m, null);
    else {
      const along = Math.atan2(y2 - y1, x2 - x1);
      meet(x1, y1, distance_m, along);
      meet(x2, y2, distance_m, along + Math.PI);
    }
  }
  return found.values();
}

/** The sector around a joint that no rectangle of the pieces in `leaving` covers: an intersection of half discs. */
function cap({ x, y, distance_m, leaving }: Joint): Float64Array[] {
  const directions = leaving.filter((direction) => direction !== null);
  const first = directions[0];
  if (first === undefined) return [sector(x, y, distance_m, 0, 2 * Math.PI)];
  const middle = first + Math.PI;
  let from = -Math.PI / 2;
  let to = Math.PI / 2;
  for (const direction of directions) {
    const turn = wrapped(direction - first);
    from = Math.max(from, turn - Math.PI / 2);
    to = Math.min(to, turn + Math.PI / 2);
  }
  return to > from ? [sector(x, y, distance_m, middle + from, middle + to)] : [];
}

/** An angle in (-π, π]. */
function wrapped(angle: number): number {
  return angle - 2 * Math.PI * Math.ceil(angle / (2 * Math.PI) - 0.5);
}

/** Part of a disc with the disc part's own area: corners at r·√(θ/sin θ) for steps of θ, which stand off by r·θ²/12 at most. */
function sector(x: number, y: number, radius_m: number, from: number, to: number): Float64Array {
  const whole = to - from >= 2 * Math.PI;
  const steps = Math.max(whole ? 8 : 1, Math.ceil((to - from) / Math.sqrt((12 * arcTolerance_m) / radius_m)));
  const step = (to - from) / steps;
  const corner_m = radius_m * Math.sqrt(step / Math.sin(step));
  const points = new Float64Array(2 * (whole ? steps : steps + 2));
  let at = 0;
  if (!whole) {
    points[at++] = x;
    points[at++] = y;
  }
  for (let i = 0; at < points.length; i++) {
    points[at++] = x + corner_m * Math.cos(from + i * step);
    points[at++] = y + corner_m * Math.sin(from + i * step);
  }
  return points;
}

function rectangleOf({ x1, y1, x2, y2, distance_m }: Piece): Float64Array | null {
  const length = Math.hypot(x2 - x1, y2 - y1);
  if (distance_m <= 0 || length === 0) return null;
  const [alongX, alongY] = [(x2 - x1) / length, (y2 - y1) / length];
  const past = Math.min(overlap_m, distance_m / 100);
  const [endX, endY] = [alongX * past, alongY * past];
  const [sideX, sideY] = [-alongY * distance_m, alongX * distance_m];
  return Float64Array.of(
    x1 - endX - sideX,
    y1 - endY - sideY,
    x2 + endX - sideX,
    y2 + endY - sideY,
    x2 + endX + sideX,
    y2 + endY + sideY,
    x1 - endX + sideX,
    y1 - endY + sideY,
  );
}

/**
 * The corners of a closed ring that are seen: those left out lie within the tolerance of the lines between those kept (Douglas and Peucker
 * 1973). Arcs that are true to a millimetre have hundreds of corners, and each is a sliver to fill.
 */
export function thinned<P extends readonly [x: number, y: number]>(
  ring: readonly P[],
  tolerance: number,
): readonly P[] {
  const count = ring.length;
  const far = furthest(ring, 0, 0, count);
  if (count < 4 || far === null) return ring;
  const isKept = new Uint8Array(count);
  isKept[0] = 1;
  isKept[far.at] = 1;
  const spans: [from: number, to: number][] = [
    [0, far.at],
    [far.at, count],
  ];
  for (let span = spans.pop(); span !== undefined; span = spans.pop()) {
    const [from, to] = span;
    const worst = furthest(ring, from, to, to);
    if (worst === null || worst.away <= tolerance) continue;
    isKept[worst.at] = 1;
    spans.push([from, worst.at], [worst.at, to]);
  }
  const kept = ring.filter((_, i) => isKept[i] === 1);
  return kept.length < 3 ? ring : kept;
}

/** Of the corners between `from` and `end`, the one furthest from the piece `from` to `to`; the ring goes on after its last corner. */
function furthest(
  ring: readonly (readonly [x: number, y: number])[],
  from: number,
  to: number,
  end: number,
): { readonly at: number; readonly away: number } | null {
  const [px, py] = ring[from] ?? [0, 0];
  const [qx, qy] = ring[to % ring.length] ?? [0, 0];
  const [dx, dy] = [qx - px, qy - py];
  const length2 = dx * dx + dy * dy;
  let worst: { at: number; away: number } | null = null;
  for (let i = from + 1; i < end; i++) {
    const [x, y] = ring[i] ?? [0, 0];
    const along = length2 === 0 ? 0 : Math.min(1, Math.max(0, ((x - px) * dx + (y - py) * dy) / length2));
    const away = Math.hypot(x - px - along * dx, y - py - along * dy);
    if (worst === null || away > worst.away) worst = { at: i, away };
  }
  return worst;
}

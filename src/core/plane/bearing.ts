/** This near to 180° is 0°: noise of a line that runs due north. */
const noise_deg = 1e-9;

/** Bearing of a line, clockwise from north, in [0, 180): a row that runs at 200° runs at 20°. */
export function lineBearing_deg(bearing_deg: number): number {
  const turned = bearing_deg % 180;
  const positive = turned < 0 ? turned + 180 : turned;
  return positive >= 180 - noise_deg ? 0 : positive;
}

/** Grid bearing of the line from p to q in the plane, in [0, 180). */
export function gridBearing_deg(px: number, py: number, qx: number, qy: number): number {
  return lineBearing_deg((Math.atan2(qx - px, qy - py) * 180) / Math.PI);
}

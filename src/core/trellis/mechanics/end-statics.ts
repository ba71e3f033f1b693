/* Statics of row ends: the row's direction is horizontal, angles in degrees from the ground. Forces in newtons. */

const radians = (angle_deg: number) => (angle_deg * Math.PI) / 180;

/** Wires of a row end: each pulls so much at a height. */
export interface WirePull {
  readonly tension_n: number;
  readonly height_m: number;
}

/** All wires together: sum of pulls, moment at the ground, and the one pull at a height that turns the post as much, M / h. */
export function endPull(wires: readonly WirePull[], at_m: number) {
  const pull_n = wires.reduce((sum, { tension_n }) => sum + tension_n, 0);
  const moment_nm = wires.reduce((sum, { tension_n, height_m }) => sum + tension_n * height_m, 0);
  return { pull_n, moment_nm, equivalent_n: moment_nm / at_m };
}

/**
 * A post that leans out at angle a, tied back at angle b, pulled by H at the tie: tie H sin a / sin(a + b), post thrust tie sin b / sin a,
 * uplift tie sin b, drag tie cos b. An upright post is a = 90: tie H / cos b, uplift and thrust H tan b. A post that leans over the row
 * has a over 90.
 */
export function tiedPost(pull_n: number, post_deg: number, tie_deg: number) {
  const [a, b] = [radians(post_deg), radians(tie_deg)];
  const tie_n = (pull_n * Math.sin(a)) / Math.sin(a + b);
  return {
    tie_n,
    thrust_n: (tie_n * Math.sin(b)) / Math.sin(a),
    uplift_n: tie_n * Math.sin(b),
    drag_n: tie_n * Math.cos(b),
  };
}

/** A tied post in the ground: foot to anchor h (cot a + cot b), tie h / sin b, post above ground h / sin a, top out h cot a, metres. */
export function tiedPostLengths_m(height_m: number, post_deg: number, tie_deg: number) {
  const [a, b] = [radians(post_deg), radians(tie_deg)];
  return {
    footToAnchor_m: height_m * (1 / Math.tan(a) + 1 / Math.tan(b)),
    topOut_m: height_m / Math.tan(a),
    tie_m: height_m / Math.sin(b),
    post_m: height_m / Math.sin(a),
  };
}

/** An H-brace, rail at a height, posts so far apart: rail H, diagonal H / cos t, end post pulled up by H tan t, tan t = height / spacing. */
export function hBrace(pull_n: number, height_m: number, spacing_m: number) {
  const angle = Math.atan2(height_m, spacing_m);
  return {
    angle_deg: (angle * 180) / Math.PI,
    rail_n: pull_n,
    diagonal_n: pull_n / Math.cos(angle),
    uplift_n: pull_n * Math.tan(angle),
    diagonal_m: Math.hypot(height_m, spacing_m),
  };
}

/** A strut inside the row at an angle from the ground: pressed by H / cos f, which pushes the end post up by H tan f. */
export function strut(pull_n: number, angle_deg: number) {
  const f = radians(angle_deg);
  return { strut_n: pull_n / Math.cos(f), uplift_n: pull_n * Math.tan(f) };
}

/** Force upward on a post where the wires change their slope, T (sin f2 - sin f1): dips pull up, crests push down. Slopes as ratios. */
export function gradeChange_n(tension_n: number, slopeBefore: number, slopeAfter: number): number {
  return tension_n * (Math.sin(Math.atan(slopeAfter)) - Math.sin(Math.atan(slopeBefore)));
}

/** Sideways force on a post where a row bends, 2 T sin(d/2). */
export function bend_n(tension_n: number, bend_deg: number): number {
  return 2 * tension_n * Math.sin(radians(bend_deg) / 2);
}

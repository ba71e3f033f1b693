/**
 * Depth that a post without tie or brace needs against a pull at a height, m. International Building Code 1807.3.2.1, free head:
 * d = A/2 (1 + sqrt(1 + 4.36 h / A)), A = 2.34 P / (S1 b), S1 the soil's sideways strength at a third of the depth. `soil_papm` is that
 * strength per metre of depth; silty or clayey sand 23.563 kPa/m (150 psf per ft; table 1806.2 from memory), twice as much for posts that
 * may move half an inch (1806.3.4).
 */
export function freePostDepth_m(pull_n: number, height_m: number, width_m: number, soil_papm: number): number {
  // S1 grows with the depth and the depth falls with S1, so there is one depth that fits: found by halving.
  const needed_m = (depth_m: number): number => {
    const a_m = freePostA_m(pull_n, width_m, (soil_papm * depth_m) / 3);
    return (a_m / 2) * (1 + Math.sqrt(1 + (4.36 * height_m) / a_m));
  };
  let [low_m, high_m] = [1e-6, 1];
  while (needed_m(high_m) > high_m) high_m *= 2;
  for (let i = 0; i < 200 && high_m - low_m > 1e-12 * high_m; i++) {
    const middle_m = (low_m + high_m) / 2;
    if (needed_m(middle_m) > middle_m) low_m = middle_m;
    else high_m = middle_m;
  }
  return high_m;
}

/** The length A = 2.34 P / (S1 b) of that formula, m. */
export function freePostA_m(pull_n: number, width_m: number, strength_pa: number): number {
  return (2.34 * pull_n) / (strength_pa * width_m);
}

/**
 * The same for a post that is held at the ground, as by concrete paving: d2 = 4.25 M / (S3 b), S3 at the full depth (1807.3.2.2), which
 * makes d3 = 4.25 M / (s b).
 */
export function heldPostDepth_m(moment_nm: number, width_m: number, soil_papm: number): number {
  return Math.cbrt((4.25 * moment_nm) / (soil_papm * width_m));
}

/** Silty or clayey sand, Pa per metre of depth. */
export const sandySoil_papm = 23_563.12;

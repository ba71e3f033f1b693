/** A point this near to a line counts as on it: far above the noise of coordinates, far below anything that can be staked. */
export const snap_m = 1e-6;

/** What a distance may fall short of by, so that a row set out exactly at its setback is not cut by the last bit of a number. */
export const distanceSlack_m = 5e-10;

/** A box in the plane, metres. */
export interface PlaneBox {
  readonly west_m: number;
  readonly south_m: number;
  readonly east_m: number;
  readonly north_m: number;
}

/** Drip of each row, in the order of the plan's rows. */
export interface Drip {
  readonly rows: readonly {
    /** Hose from the end post at the water end to past the last vine. */
    readonly lateral_m: number;
    readonly emitters: number;
    readonly hoseClips: number;
    readonly flow_lph: number;
  }[];
  readonly lateral_m: number;
  readonly emitters: number;
  readonly flow_lph: number;
}

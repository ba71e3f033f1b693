import type { WirePurpose } from "../project/project.ts";

export type WireLengths = Readonly<Partial<Record<WirePurpose, number>>>;

/** Structure and wire of each row, in the order of the plan's rows. */
export interface Trellis {
  readonly rows: readonly {
    /** Wire to cut by purpose: ground length and both tie-offs, for every wire of that purpose. */
    readonly wire_m: WireLengths;
    readonly stakeClips: number;
  }[];
  readonly wire_m: WireLengths;
}

/** Tension, sag and loads; of the rows of a block those with the longest bay and the longest run. */
export interface TrellisLoads {
  /** In the order of the blocks of the trellis. */
  readonly blocks: readonly BlockLoads[];
  /** Posts that the wires pull out of the ground; rows by their place in the plan. */
  readonly dips: readonly DipLoad[];
}

export interface BlockLoads {
  /** In the order of the block's wires; each is about one single wire. */
  readonly wires: readonly WireLoads[];
  readonly end: EndLoads;
}

export interface WireLoads {
  /** Longest bay of the block, end bays too; and the longest run. */
  readonly bay_m: number;
  readonly run_m: number;
  /** Weight per metre of the wire, and of what hangs on it all year (hose full of water) and at harvest, N/m. */
  readonly ownWeight_npm: number;
  readonly hoseWeight_npm: number;
  readonly cropWeight_npm: number;
  readonly breaking_n: number;
  readonly tension_n: number;
  /** In the cold without crop, in the heat without crop. */
  readonly coldest_n: number;
  readonly hottest_n: number;
  /** At harvest when the ends do not give at all; when they give, it stays at the tension set. */
  readonly cropRigid_n: number;
  /** Largest of all of these over the breaking load. */
  readonly share_ratio: number;
  /** Sag at the tension set, in the heat, and at harvest when the ends give way. */
  readonly sag_m: number;
  readonly hottestSag_m: number;
  readonly cropSag_m: number;
  /** How far the end of the longest run comes in when it is tightened. */
  readonly takeUp_m: number;
  /** Hang this mass at mid-bay: the wire goes down so much, when it is at its tension. */
  readonly check: { readonly mass_kg: number; readonly drop_m: number };
}

export interface EndLoads {
  /** All wires of a row at the tension set, all in the cold. */
  readonly pull_n: number;
  readonly coldestPull_n: number;
  /** Below: at the coldest pull. Overturning moment at the ground, N m. */
  readonly moment_nm: number;
  /** Pull along the tie-back, all strands together; null without one. */
  readonly tie_n: number | null;
  readonly anchorUplift_n: number | null;
  readonly anchorDrag_n: number | null;
  /** Along a strut or rail, pressed; null without one. */
  readonly brace_n: number | null;
  /** In the diagonal wire of an H-brace, or the ground wire of an inside brace. */
  readonly diagonal_n: number | null;
  /** Along the end post: pushing it into the ground, or pulling it out when below 0. */
  readonly postThrust_n: number;
  /** What the soil at the foot of the post must hold: pull less what tie or brace takes. */
  readonly atGround_n: number;
  /** How deep a post without tie or brace would have to stand in sandy soil that may give half an inch; null for ends that are held. */
  readonly freeDepth_m: number | null;
}

export interface DipLoad {
  readonly row: number;
  readonly station_m: number;
  /** Rise over run of the bays before and behind the post, going from the start of the row. */
  readonly before_ratio: number;
  readonly after_ratio: number;
  readonly uplift_n: number;
}

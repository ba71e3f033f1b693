import { type Account, account, commonPractice, geometry, input, inputs, remark } from "../account.ts";
import { say } from "../finding.ts";
import type { PostSettings, StakeSettings } from "../project/project.ts";
import type { Rows } from "../rows/rows.ts";
import { tieFastening_m } from "./end-parts.ts";
import type { PartKind } from "./part.ts";
import { soldLength_m } from "./post-layout.ts";
import type { EndAssembly, PostLayout, Trellis } from "./trellis.ts";

/** How the length of a post or stake came about, m: as stated, else the shortest that is sold and reaches from the ground's depth to its top. */
export function postLengthAccount(
  post: PostLayout,
  settings: PostSettings | StakeSettings,
  frostDepth_m: number | null,
  lengths_m: readonly number[],
): Account {
  if (settings.length_m !== null) {
    return account(
      { formula: say`As set.`, inputs: [input("Length", "length", settings.length_m)], source: commonPractice },
      (length_m) => Number(length_m),
    );
  }
  return account(
    {
      formula: say`Height of its top and depth in the ground, divided by the sine of its angle; then the shortest length sold that reaches, or that very length where none does.`,
      inputs: [
        input("Top above the ground", "length", post.top_m),
        input("Depth wished for", "length", settings.embedment_m),
        input("Frost depth, at least", "length", frostDepth_m ?? 0),
        input("Angle from the ground", "angle", post.angle_deg),
        ...lengths_m.map((length_m) => input("Sold in", "length", length_m)),
      ],
      source: `geometry; depths ${commonPractice}`,
    },
    (top_m = 0, wished_m = 0, frost_m = 0, angle_deg = 90, ...sold_m) => {
      const needed_m = (top_m + Math.max(wished_m, frost_m)) / sine(angle_deg);
      return soldLength_m(needed_m, sold_m);
    },
  );
}

/** How deep a post stands, m: what its top does not need of it, straight down. */
export function postDepthAccount({ length_m, angle_deg, top_m }: PostLayout): Account {
  return account(
    {
      formula: say`Length times the sine of its angle, less the height of its top: what is left over goes into the ground.`,
      inputs: [
        input("Length", "length", length_m),
        input("Angle from the ground", "angle", angle_deg),
        input("Top above the ground", "length", top_m),
      ],
      source: geometry,
    },
    (length = 0, angle = 90, top = 0) => length * sine(angle) - top,
  );
}

/** How the tie-back of one end of a row came about as wire, m: its strands and what fastening takes. */
export function tieWireAccount(tie: NonNullable<EndAssembly["tie"]>): Account {
  return account(
    {
      formula: say`From the post to the anchor along the slope, times the strands, and what fastening both its ends takes.`,
      inputs: [
        ...tieTriangle(tie),
        input("Strands", "count", tie.strands),
        input("Fastening", "length", tieFastening_m),
      ],
      source: `geometry; fastening ${commonPractice}`,
    },
    (height_m = 0, out_m = 0, post_m = 0, strands = 0, fastening_m = 0) =>
      strands * Math.hypot(height_m, out_m - post_m) + fastening_m,
  );
}

/** How steep the tie-back is, degrees from the ground. */
export function tieAngleAccount(tie: NonNullable<EndAssembly["tie"]>): Account {
  return account(
    {
      formula: say`The angle whose tangent is height over the distance between anchor and post at that height.`,
      inputs: tieTriangle(tie),
      source: geometry,
    },
    (height_m = 0, out_m = 0, post_m = 0) => (Math.atan2(height_m, out_m - post_m) * 180) / Math.PI,
  );
}

/** How many of an article there are, or how many metres of it: what every row takes, added up. */
export function partAccount(rows: Rows, trellis: Trellis, article: string): Account {
  const taken = trellis.rows.map(({ parts }) => parts.find(({ part }) => part.article === article));
  const part = taken.find((each) => each !== undefined)?.part;
  const kind = part?.unit === "m" ? "length" : "count";
  const severalBlocks = trellis.blocks.length > 1;
  return account(
    {
      formula: say`What every row takes, added up over the rows.`,
      inputs: [
        ...trellis.blocks.map(({ block }) =>
          inputs(
            severalBlocks ? `Rows of ${block}` : "Rows",
            kind,
            taken.flatMap((each, i) => (each !== undefined && rows.rows[i]?.block === block ? [each.quantity] : [])),
          ),
        ),
        ...(part === undefined ? [] : [remark("In a row", perRow[part.kind])]),
      ],
      source: commonPractice,
    },
    (...quantities) => quantities.reduce((sum, each) => sum + each, 0),
  );
}

/** What makes up the number of a part in one row. */
const perRow: Readonly<Record<PartKind, string>> = {
  "end-post": "one at each end",
  "line-post": "as the bays are laid out",
  "brace-post": "one inside each end post",
  "brace-rail": "one at each end, cut to fit between end post and brace post",
  "brace-strut": "one at each end, cut to reach from the end post to its foot",
  "brace-pin": "two for a rail, one for a strut",
  "brace-foot": "one for each strut",
  "brace-wire": "two strands of the diagonal or of the ground wire, and fastening, at each end",
  anchor: "one at each end",
  "buried-anchor": "one at each end",
  "tie-wire": "the strands from post to anchor, and fastening, at each end",
  "tie-gripper": "one for each tie-back or brace wire",
  "concrete-bag": "the hole less the post, in whole bags for every end post",
  stake: "as many as are set for a vine",
  "stake-clip": "one for every stake and fruiting wire",
  staple: "one for every wire on every post that takes staples, brace posts too; movable wires at the ends only",
  "wire-clip": "one for every wire on every post with notches; movable wires at the ends only",
  "eye-bolt": "one for every wire on every post that takes eye bolts; movable wires at the ends only",
  "wire-hook": "one for every movable wire on every line post and brace post",
  gripper: "one for every wire end that is gripped",
  "crimp-sleeve": "two for every wire end that is crimped",
  tensioner: "as many as are set for every wire",
};

function tieTriangle({ height_m, anchorOut_m, postOut_m }: NonNullable<EndAssembly["tie"]>) {
  return [
    input("Height on the post", "length", height_m),
    input("Anchor outside the foot of the post", "length", anchorOut_m),
    input("Post at that height, outside its foot", "length", postOut_m),
  ];
}

function sine(angle_deg: number): number {
  return Math.sin((angle_deg * Math.PI) / 180);
}

import { type Finding, listed, quantity, say, unplaced } from "../finding.ts";
import type { Block } from "../project/project.ts";
import type { Rows } from "../rows/rows.ts";
import type { BlockLoads, DipLoad, WireLoads } from "./loads.ts";
import type { BlockTrellis, HungWire } from "./trellis.ts";

/** A block with its structure and loads. */
export interface LoadedBlock {
  readonly block: Block;
  readonly structure: BlockTrellis;
  readonly loads: BlockLoads;
}

/** High-tensile 12 1/2 gauge is never pulled over 250 lbf (fence-wire suppliers' articles), in proportion to its area for others. */
const mostHighTensile_npmm2 = 1112.0553 / 4.96624;
/** A hair over a limit is the limit. */
const slack = 1 + 1e-9;
const slack_m = 1e-9;

/**
 * What the loads of one block give to say. Findings: trellis/over-most-of-breaking, trellis/over-share-of-breaking,
 * trellis/tension-over-usual, trellis/hangs-too-low, trellis/wires-touch, trellis/anchor-over-capacity, trellis/free-post-too-shallow,
 * trellis/posts-in-dips, trellis/temperatures-crossed.
 */
export function blockLoadFindings(
  { block, structure, loads }: LoadedBlock,
  rows: Rows,
  dips: readonly DipLoad[],
): readonly Finding[] {
  const { trellis, name } = block;
  const each = structure.wires.flatMap((hung, i) => {
    const own = loads.wires[i];
    return own === undefined ? [] : [{ hung, own }];
  });
  const { end } = loads;
  const byShare = [...each].sort((a, b) => b.own.share_ratio - a.own.share_ratio);
  const over = byShare.filter(({ own }) => own.share_ratio > trellis.mostShare_ratio * slack);
  const near = byShare.filter(
    ({ own }) =>
      own.share_ratio > trellis.warnShare_ratio * slack && own.share_ratio <= trellis.mostShare_ratio * slack,
  );
  const hard = each.filter(
    ({ hung: { wire } }) =>
      wire.tensile.startsWith("grade") &&
      wire.tension_n > mostHighTensile_npmm2 * ((Math.PI / 4) * wire.diameter_mm ** 2) * slack,
  );
  const low = each
    .filter(({ hung, own }) => hung.height_m - lowestSag_m(own) < trellis.leastClearance_m - slack_m)
    .sort((a, b) => a.hung.height_m - lowestSag_m(a.own) - (b.hung.height_m - lowestSag_m(b.own)));
  const touching = touchingWires(each);
  const ownDips = dips.filter(({ row }) => rows.rows[row]?.block === block.id);
  const dipRows = [...new Set(ownDips.map(({ row }) => row))];
  const worst = ownDips.reduce((most, dip) => Math.max(most, dip.uplift_n), 0);
  return [
    ...temperatureFindings(block),
    ...over
      .slice(0, 1)
      .map(({ hung, own }) => shareFinding("error", name, hung, own, trellis.mostShare_ratio, over.length)),
    ...near
      .slice(0, 1)
      .map(({ hung, own }) => shareFinding("warning", name, hung, own, trellis.warnShare_ratio, near.length)),
    ...hard
      .slice(0, 1)
      .map(({ hung: { wire } }) =>
        unplaced(
          "trellis/tension-over-usual",
          "warning",
          say`${name}: the ${wire.purpose} wire is to be pulled to ${quantity("force", wire.tension_n)}.`,
          say`High-tensile wire of ${quantity("diameter", wire.diameter_mm)} is set to at most ${quantity("force", mostHighTensile_npmm2 * ((Math.PI / 4) * wire.diameter_mm ** 2))} by those who sell it; more loads the ends without making the wire straighter.`,
          say`Set it to less, and add posts where it sags.`,
        ),
      ),
    ...low
      .slice(0, 1)
      .map(({ hung, own }) =>
        unplaced(
          "trellis/hangs-too-low",
          "warning",
          say`${name}: the ${hung.wire.purpose} wire at ${quantity("length", hung.height_m)} comes down to ${quantity("length", Math.max(0, hung.height_m - lowestSag_m(own)))} at mid-bay; ${quantity("length", trellis.leastClearance_m)} is to stay clear.`,
          say`What hangs low is caught by mowers and weeding tools.`,
          say`Hang it higher, tighten it more as far as its breaking load allows, or make bays shorter.`,
        ),
      ),
    ...touching
      .slice(0, 1)
      .map(([upper, lower]) =>
        unplaced(
          "trellis/wires-touch",
          "warning",
          say`${name}: the wire at ${quantity("length", upper.height_m)} sags on to the one at ${quantity("length", lower.height_m)}${touching.length === 1 ? "" : touching.length === 2 ? ", and so does one more" : `, and so do ${touching.length - 1} more`}.`,
          say`Wires that touch rub, and shoots cannot be led between them.`,
          say`Hang them farther apart, tighten the upper one, or make bays shorter.`,
        ),
      ),
    ...(end.tie_n !== null && trellis.anchorCapacity_n !== null && end.tie_n > trellis.anchorCapacity_n * slack
      ? [
          unplaced(
            "trellis/anchor-over-capacity",
            "error",
            say`${name}: the anchors are pulled by ${quantity("force", end.tie_n)} in the cold; they hold ${quantity("force", trellis.anchorCapacity_n)} as you said.`,
            say`An anchor that gives lets the whole row go slack, and may come out at once.`,
            say`Use larger or more anchors, set them farther out, or pull the wires less.`,
          ),
        ]
      : []),
    ...(end.freeDepth_m !== null && end.freeDepth_m > structure.endPost.depth_m
      ? [
          unplaced(
            "trellis/free-post-too-shallow",
            "warning",
            say`${name}: an end post without tie-back or brace would have to stand about ${quantity("length", end.freeDepth_m)} deep in sandy soil against ${quantity("force", end.coldestPull_n)}; it stands ${quantity("length", structure.endPost.depth_m)} deep.`,
            say`The soil gives way, sooner when it is wet.`,
            say`Tie it back or brace it.`,
          ),
        ]
      : []),
    ...(dipRows.length > 0
      ? [
          unplaced(
            "trellis/posts-in-dips",
            "warning",
            say`${name}: in dips of ${dipRows.length === 1 ? "row" : "rows"} ${listed(dipRows.map((i) => rows.rows[i]?.id ?? ""))} the wires pull line posts up, by ${quantity("force", worst)} at worst.`,
            say`A post that is pulled up comes out over the years, and the wires rise off the ground's line.`,
            say`Set those posts deeper, tie them down to an anchor, or pull the wires less.`,
          ),
        ]
      : []),
  ];
}

/** Wires further down count, not wires pulled tight: the most a wire sags in the heat or at harvest. */
function lowestSag_m(own: WireLoads): number {
  return Math.max(own.hottestSag_m, own.cropSag_m);
}

function shareFinding(
  severity: "error" | "warning",
  block: string,
  { wire, height_m }: HungWire,
  own: WireLoads,
  limit_ratio: number,
  wires: number,
): Finding {
  const why =
    own.cropRigid_n > Math.max(own.coldest_n, own.hottest_n)
      ? say`${quantity("force", own.cropRigid_n)} at harvest when the ends do not give`
      : say`${quantity("force", Math.max(own.coldest_n, own.hottest_n))} in the cold`;
  const more = wires === 1 ? "" : wires === 2 ? ", and so is one more" : `, and so are ${wires - 1} more`;
  return unplaced(
    severity === "error" ? "trellis/over-most-of-breaking" : "trellis/over-share-of-breaking",
    severity,
    [
      ...say`${block}: the ${wire.purpose} wire at ${quantity("length", height_m)} is loaded to ${quantity("ratio", own.share_ratio)} of its breaking load, `,
      ...why,
      ...say`${more}; the limit is ${quantity("ratio", limit_ratio)}.`,
    ],
    say`Wire that is pulled near its breaking load stretches for good, and breaks where it is nicked or bent.`,
    say`Pull it less, use thicker wire or wire of a higher class, or let the ends give a little.`,
  );
}

/** Fixed wires whose sag reaches the wire under them, upper and lower. */
function touchingWires(
  each: readonly { readonly hung: HungWire; readonly own: WireLoads }[],
): readonly (readonly [HungWire, HungWire])[] {
  const fixed = each.filter(({ hung }) => !hung.wire.isMovable).sort((a, b) => a.hung.height_m - b.hung.height_m);
  return fixed.flatMap((lower, i) => {
    const upper = fixed[i + 1];
    if (upper === undefined) return [];
    const between_m = upper.hung.height_m - lowestSag_m(upper.own) - (lower.hung.height_m - lower.own.sag_m);
    return between_m <= 0 && upper.hung.height_m > lower.hung.height_m ? [[upper.hung, lower.hung] as const] : [];
  });
}

/** Wire is tightened at a temperature within the range it lives through, else "in the cold" and "in the heat" mean nothing. */
function temperatureFindings({ name, trellis }: Block): readonly Finding[] {
  const { coldest_c, tensionedAt_c, hottest_c } = trellis;
  if (coldest_c <= tensionedAt_c && tensionedAt_c <= hottest_c) return [];
  return [
    unplaced(
      "trellis/temperatures-crossed",
      "warning",
      say`${name}: wire is tightened at ${quantity("temperature", tensionedAt_c)}, which does not lie between the coldest, ${quantity("temperature", coldest_c)}, and the hottest, ${quantity("temperature", hottest_c)}.`,
      say`Tension in the cold and sag in the heat are reckoned from it.`,
      say`Set the coldest and the hottest the wire lives through, and when it is tightened.`,
    ),
  ];
}

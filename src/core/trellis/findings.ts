import { type Finding, listed, quantity, say, unplaced } from "../finding.ts";
import type { EndAssemblyKind } from "../project/project.ts";

/* Most are about a block; `block` is its name. They have no place on the map: a setting is at fault, not a spot. */

/** Wires went to the nearest notch of their posts. */
export function heightSnapped(
  block: string,
  moved: readonly { readonly purpose: string; readonly wished_m: number; readonly height_m: number }[],
): Finding {
  return unplaced(
    "trellis/height-snapped",
    "note",
    [
      ...say`${block}: line posts hold wire at their notches, so `,
      ...moved.flatMap(({ purpose, wished_m, height_m }, i) => [
        ...say`${i === 0 ? "" : ", "}the ${purpose} wire of ${quantity("length", wished_m)} hangs at ${quantity("length", height_m)}`,
      ]),
      ".",
    ],
    say`Everything is reckoned with the height the post gives.`,
    say`Nothing to do if that is near enough; else set the lowest notch and the distance between notches as your posts have them.`,
  );
}

/** Two wires at one height of a post with notches or holes. */
export function wiresShareHeight(block: string, height_m: number): Finding {
  return unplaced(
    "trellis/wires-share-height",
    "warning",
    say`${block}: two wires come to lie at ${quantity("length", height_m)}.`,
    say`One place on a post holds one wire, or one pair that is set as such.`,
    say`Move one of them, or make them one wire with a number of 2.`,
  );
}

/** The top of a leaning post stands over or beyond its anchor. */
export function anchorUnderPost(block: string, anchorOut_m: number, postOut_m: number): Finding {
  return unplaced(
    "trellis/anchor-under-post",
    "warning",
    say`${block}: the anchor sits ${quantity("length", anchorOut_m)} outside the end post, and the tie-back meets the post ${quantity("length", postOut_m)} outside.`,
    say`A tie-back that hangs straight down, or back under the post, holds nothing.`,
    say`Set the anchor farther out, or lean the post less.`,
  );
}

/** A tie-back that is steeper or flatter than is good. */
export function tieAngle(block: string, angle_deg: number, least_deg: number, most_deg: number): Finding {
  const isSteep = angle_deg > most_deg;
  return unplaced(
    "trellis/tie-angle",
    "warning",
    say`${block}: the tie-back stands ${quantity("angle", angle_deg)} from the ground; ${quantity("angle", least_deg)} to ${quantity("angle", most_deg)} is usual.`,
    isSteep
      ? say`A steep tie-back has to pull far harder than the wires do, and pulls its anchor up.`
      : say`A flat tie-back reaches far into the headland and can be run over.`,
    isSteep ? say`Set the anchor farther out, or tie lower.` : say`Set the anchor nearer to the post, or tie higher.`,
  );
}

/** Posts or stakes have to be longer than any that is sold. */
export function longerThanSold(block: string, what: string, needed_m: number, sold_m: number): Finding {
  return unplaced(
    "trellis/longer-than-sold",
    "warning",
    say`${block}: ${what} have to be ${quantity("length", needed_m)} long; the longest sold are ${quantity("length", sold_m)}.`,
    say`They are on the list in a length that may not be had.`,
    say`Hang the wires lower, stand them less deep, or add a length to those that are sold.`,
  );
}

/** A stated length that leaves a post or stake too shallow. */
export function tooShallow(block: string, what: string, length_m: number, depth_m: number, wished_m: number): Finding {
  return unplaced(
    "trellis/too-shallow",
    "warning",
    depth_m > 0
      ? say`${block}: ${what} of ${quantity("length", length_m)} stand only ${quantity("length", depth_m)} deep, ${quantity("length", wished_m)} is wished.`
      : say`${block}: ${what} of ${quantity("length", length_m)} do not reach the ground under their wires.`,
    say`A post that stands shallow leans or comes out.`,
    say`Choose a longer one, or hang the highest wire lower.`,
  );
}

/** Frost goes deeper than posts were to stand. */
export function frostGoverns(block: string, what: string, frost_m: number, wished_m: number): Finding {
  return unplaced(
    "trellis/frost-governs",
    "note",
    say`${block}: ${what} stand at least ${quantity("length", frost_m)} deep for the frost, not ${quantity("length", wished_m)}.`,
    say`Ground that freezes under a post lifts it a little every winter.`,
    say`Nothing to do; the lengths on the list are reckoned with it.`,
  );
}

/** End bays too short for the brace that stands in them. */
export function bayShorterThanBrace(block: string, rows: readonly string[], brace_m: number): Finding {
  return unplaced(
    "trellis/bay-shorter-than-brace",
    "warning",
    say`${block}: the brace reaches ${quantity("length", brace_m)} into the row, past the first line post of row ${listed(rows)}.`,
    say`Brace and line post would stand in each other's way there.`,
    say`Shorten the brace (not under one and a half times its height), or leave that line post out.`,
  );
}

/** End posts with nothing that holds them against the wires. */
export function singlePost(block: string, rows: number, longRows: readonly string[], long_m: number): Finding {
  return unplaced(
    "trellis/single-post",
    "warning",
    longRows.length === 0
      ? say`${block}: the end posts of ${rows === 1 ? "its row" : `its ${rows} rows`} stand alone, without tie-back or brace.`
      : say`${block}: end posts stand alone, without tie-back or brace, also where rows are over ${quantity("length", long_m)}: row ${listed(longRows)}.`,
    say`Wire under tension pulls such a post over, sooner in wet ground; the wires go slack.`,
    say`Tie the posts back to anchors or brace them; single posts only for short rows with loose wires.`,
  );
}

/** A wrapped loop in wire that is too stiff to be wrapped by hand. */
export function stiffLoop(block: string, purposes: readonly string[], diameter_mm: number): Finding {
  return unplaced(
    "trellis/stiff-loop",
    "warning",
    say`${block}: ${listed(purposes)} wire of high-tensile steel, ${quantity("diameter", diameter_mm)}, is to end in a wrapped loop.`,
    say`Wire this stiff springs back while it is wrapped by hand and cracks where it is bent sharply.`,
    say`End it in a gripper or in crimp sleeves.`,
  );
}

/** How much of the room at row ends the ends take. */
export function endsTakeHeadland(block: string, kind: EndAssemblyKind, out_m: number, headland_m: number): Finding {
  return unplaced(
    "trellis/ends-take-headland",
    "warning",
    say`${block}: ${kind === "leaning" ? "leaning posts and their anchors" : "anchors"} reach ${quantity("length", out_m)} beyond the end posts, which leaves ${quantity("length", Math.max(0, headland_m - out_m))} of the headland of ${quantity("length", headland_m)}.`,
    say`Whoever turns there has to keep clear of anchors and tie-backs, and they stand close to the edge.`,
    say`Count distances to the anchor, make the headland longer, or use a brace inside the row.`,
  );
}

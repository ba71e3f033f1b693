import type { Finding } from "../finding.ts";
import type { Block, PostSettings, StakeSettings } from "../project/project.ts";
import type { Rows } from "../rows/rows.ts";
import {
  anchorUnderPost,
  bayShorterThanBrace,
  endsTakeHeadland,
  frostGoverns,
  heightSnapped,
  longerThanSold,
  singlePost,
  stiffLoop,
  tieAngle,
  tooShallow,
  wiresShareHeight,
} from "./findings.ts";
import type { BlockTrellis, PostLayout } from "./trellis.ts";

/** Tie-backs between these angles from the ground need no word. Common practice, no source. */
const flattest_deg = 25;
const steepest_deg = 65;
/** Rows up to here may have single end posts when their wires are loose. Common practice, no source. */
const shortRow_m = 15;
/** High-tensile wire from this thickness on is not wrapped by hand. Common practice, no source. */
const stiff_mm = 2.5;
/** Share of the headland that ends may take without a word. Common practice, no source. */
const headlandShare = 0.5;
/** A millimetre is no reason for a word. */
const slack_m = 1e-3;

/**
 * What there is to say about the structure of one block. Findings: trellis/height-snapped, trellis/wires-share-height,
 * trellis/anchor-under-post, trellis/tie-angle, trellis/longer-than-sold, trellis/too-shallow, trellis/frost-governs,
 * trellis/bay-shorter-than-brace, trellis/single-post, trellis/stiff-loop, trellis/ends-take-headland.
 */
export function structureFindings(rows: Rows, block: Block, structure: BlockTrellis): readonly Finding[] {
  if (!rows.rows.some((row) => row.block === block.id)) return [];
  return [...wireFindings(block, structure), ...postFindings(block, structure), ...endFindings(rows, block, structure)];
}

function wireFindings({ name, trellis }: Block, { wires }: BlockTrellis): readonly Finding[] {
  const moved = wires.filter(({ wire, height_m }) => Math.abs(height_m - wire.height_m) > slack_m);
  const shared = wires.filter(({ height_m }, i) =>
    wires.some((other, k) => k < i && Math.abs(other.height_m - height_m) < slack_m),
  );
  const stiff = wires.filter(
    ({ wire }) =>
      wire.tensile.startsWith("grade") &&
      wire.diameter_mm >= stiff_mm &&
      (wire.tieOffStart.kind === "loop" || wire.tieOffEnd.kind === "loop"),
  );
  const [thick] = stiff;
  const isNotched = trellis.linePost.holds === "notch" || trellis.linePost.holds === "hole";
  return [
    ...(moved.length === 0
      ? []
      : [
          heightSnapped(
            name,
            moved.map(({ wire, height_m }) => ({ purpose: wire.purpose, wished_m: wire.height_m, height_m })),
          ),
        ]),
    ...(isNotched && shared[0] !== undefined ? [wiresShareHeight(name, shared[0].height_m)] : []),
    ...(thick === undefined
      ? []
      : [stiffLoop(name, [...new Set(stiff.map(({ wire }) => wire.purpose))], thick.wire.diameter_mm)]),
  ];
}

function postFindings({ name, trellis }: Block, structure: BlockTrellis): readonly Finding[] {
  const { frostDepth_m, postLengths_m, stakeLengths_m } = trellis;
  const each: readonly (readonly [
    string,
    PostLayout | null,
    PostSettings | StakeSettings,
    readonly number[],
    boolean,
  ])[] = [
    ["end posts", structure.endPost, trellis.endPost, postLengths_m, true],
    ["line posts", structure.linePost, trellis.linePost, postLengths_m, true],
    ["brace posts", structure.bracePost, { ...trellis.endPost, length_m: null }, postLengths_m, true],
    ["stakes", structure.stake, trellis.stake, stakeLengths_m, false],
  ];
  const { brace, kind } = structure.end;
  const rail_m = brace === null ? 0 : kind === "h-brace" ? brace.inside_m : brace.diagonal_m;
  const longest_m = postLengths_m.at(-1) ?? Infinity;
  const braces = kind === "h-brace" ? "brace rails" : "brace struts";
  const tooLong = rail_m > longest_m + slack_m ? [longerThanSold(name, braces, rail_m, longest_m)] : [];
  const posts = each.flatMap(([what, post, settings, sold_m, isFrozen]): readonly Finding[] => {
    if (post === null) return [];
    const frost_m = isFrozen ? (frostDepth_m ?? 0) : 0;
    const wished_m = Math.max(settings.embedment_m, frost_m);
    const longest_m = sold_m.at(-1) ?? Infinity;
    return [
      ...(settings.length_m === null && post.length_m > longest_m + slack_m
        ? [longerThanSold(name, what, post.length_m, longest_m)]
        : []),
      ...(post.depth_m < wished_m - slack_m ? [tooShallow(name, what, post.length_m, post.depth_m, wished_m)] : []),
      ...(frost_m > settings.embedment_m + slack_m ? [frostGoverns(name, what, frost_m, settings.embedment_m)] : []),
    ];
  });
  return [...posts, ...tooLong];
}

function endFindings(
  rows: Rows,
  { id, name, rows: layout }: Block,
  { end, endPost, wires }: BlockTrellis,
): readonly Finding[] {
  const own = rows.rows.flatMap((row, i) => (row.block === id ? [{ row, i }] : []));
  const { tie, brace, kind } = end;
  const findings: Finding[] = [];
  if (tie !== null) {
    if (tie.anchorOut_m <= tie.postOut_m + slack_m)
      findings.push(anchorUnderPost(name, tie.anchorOut_m, tie.postOut_m));
    else if (tie.angle_deg < flattest_deg || tie.angle_deg > steepest_deg)
      findings.push(tieAngle(name, tie.angle_deg, flattest_deg, steepest_deg));
    // The top of a leaning post is farther out than where it is tied.
    const top_m = tie.height_m > 0 ? (tie.postOut_m * endPost.top_m) / tie.height_m : 0;
    const out_m = Math.max(tie.anchorOut_m, top_m);
    if (layout.distancesTo === "end-post" && out_m > headlandShare * layout.headland_m)
      findings.push(endsTakeHeadland(name, kind, out_m, layout.headland_m));
  }
  if (brace !== null) {
    const short = own.filter(({ row, i }) =>
      endBays_m(rows, i).some((bay_m) => bay_m < brace.inside_m && bay_m < row.length_m),
    );
    if (short.length > 0)
      findings.push(
        bayShorterThanBrace(
          name,
          short.map(({ row }) => row.id),
          brace.inside_m,
        ),
      );
  }
  if (kind === "single" && wires.some(({ wire }) => wire.tension_n > 0)) {
    const long = own.filter(({ row }) => row.length_m > shortRow_m).map(({ row }) => row.id);
    findings.push(singlePost(name, own.length, long, shortRow_m));
  }
  return findings;
}

/** First and last bay of a row; the whole row when it has no line post. */
function endBays_m({ rows, linePosts }: Rows, i: number): readonly [number, number] {
  const length_m = rows[i]?.length_m ?? 0;
  const [from, to] = [linePosts.offsets[i] ?? 0, linePosts.offsets[i + 1] ?? 0];
  if (from === to) return [length_m, length_m];
  return [linePosts.station_m[from] ?? 0, length_m - (linePosts.station_m[to - 1] ?? 0)];
}

import type { Finding } from "../finding.ts";
import type { BlockGround, Ground, Outline } from "../ground/ground.ts";
import { isInside } from "../ground/inside.ts";
import { axesAt, turnPoint } from "../plane/axes.ts";
import { lineBearing_deg } from "../plane/bearing.ts";
import { planePoint } from "../plane/coordinate.ts";
import type { Frame } from "../plane/frame.ts";
import type { GivenRow, KeptPlace, RowSettings } from "../project/project.ts";
import { rowDirection_deg } from "./bearing.ts";
import { type ComputedRows, computedRows } from "./computed-rows.ts";
import {
  givenRowElsewhere,
  givenRowOutside,
  givenRowUnknown,
  givenTwice,
  noRow,
  shortPieces,
  tapeDiffers,
} from "./findings.ts";
import { isTapeOff, withStandingRows, withTapedLength } from "./given-rows.ts";
import { type Numbered, numbered } from "./numbering.ts";
import { rowLines } from "./row-one.ts";
import { type Clearance, rowPieces, turnedGround } from "./row-pieces.ts";

/** The rows of one block, numbered, before they are gathered into the plan. */
export interface NumberedRows {
  readonly bearing_deg: number;
  readonly gridBearing_deg: number;
  readonly rows: readonly Numbered[];
  readonly shortPieces: number;
  readonly shortLength_m: number;
  readonly findings: readonly Finding[];
}

/** What rows keep free, from the block's settings. */
export function clearanceOf(settings: RowSettings): Clearance {
  return {
    headland_m: settings.headland_m,
    anchorOut_m: settings.distancesTo === "anchor" ? settings.anchorOut_m : 0,
    usualGap_m: settings.bay_vines * settings.vineSpacing_m,
  };
}

/**
 * Rows of a block at a bearing: lines laid as row 1 is wanted, cut out of the ground, short pieces left out, rows laid to whole vines,
 * standing rows put in place of computed ones, numbered from the first side.
 * Findings: `rows/none`, `rows/short-pieces`, `rows/tape-differs`, `rows/given-row-unknown`, `rows/given-row-elsewhere`,
 * `rows/given-row-outside`, `rows/given-twice`.
 */
export function blockRows(
  ground: Ground,
  block: BlockGround,
  settings: RowSettings,
  bearing_deg: number,
  given: readonly GivenRow[],
  kept: readonly KeptPlace[],
): NumberedRows {
  const { frame } = ground;
  const direction_deg = rowDirection_deg(bearing_deg, block);
  const axes = axesAt(block.centre, direction_deg);
  const clearance = clearanceOf(settings);
  const turned = turnedGround(block, axes, clearance.usualGap_m);
  const lines = rowLines(turned, settings, clearance, frame);
  const places = kept.map(({ at }) => {
    const [u_m, v_m] = turnPoint(frame.toPlane(at), axes);
    return { u_m, v_m };
  });
  const computed = computedRows(rowPieces(turned, lines, clearance), lines, axes, settings, places, ground.causes);
  const standing = withStandingRows(computed.rows, given, axes, frame, settings);
  const taped = withTaped(numbered(standing.rows, settings.firstSide), given, settings, frame);
  const findings = [
    ...standing.findings,
    ...taped.findings,
    ...misnumbered(taped.rows, given),
    ...outside(given, block, frame),
    ...summed(computed, taped.rows, block, frame),
  ];
  const { shortPieces: pieces, shortLength_m } = computed;
  return {
    bearing_deg,
    gridBearing_deg: lineBearing_deg(direction_deg),
    rows: taped.rows,
    shortPieces: pieces,
    shortLength_m,
    findings,
  };
}

/** Rows whose length is given by number alone. */
function withTaped(
  rows: readonly Numbered[],
  given: readonly GivenRow[],
  settings: RowSettings,
  frame: Frame,
): { readonly rows: readonly Numbered[]; readonly findings: readonly Finding[] } {
  const findings: Finding[] = [];
  let result = rows;
  for (const { key, row: label, ends, tapedLength_m } of given) {
    if (ends !== null || label === null || tapedLength_m === null) continue;
    const planned = result.find((row) => row.label === label)?.row;
    if (planned === undefined) {
      findings.push(givenRowUnknown(null, key, label));
      continue;
    }
    const at = frame.toLonLat(planned.start);
    if (planned.given !== null) findings.push(givenTwice(at, key, label));
    // Standing posts may use the ground that a planned row leaves over at its ends.
    const spare_m = planned.startLeftover_m + planned.endLeftover_m;
    if (isTapeOff(tapedLength_m, planned.length_m, spare_m)) {
      findings.push(tapeDiffers(at, key, tapedLength_m, planned.length_m));
    }
    const taped = withTapedLength(planned, tapedLength_m, key, settings);
    result = result.map((one) => (one.label === label ? { ...one, row: taped } : one));
  }
  return { rows: result, findings };
}

function misnumbered(rows: readonly Numbered[], given: readonly GivenRow[]): readonly Finding[] {
  return given.flatMap(({ key, row: label, ends }) => {
    const planned = rows.find(({ row }) => row.given === key)?.label;
    if (label === null || ends === null || planned === undefined || planned === label) return [];
    return [givenRowElsewhere(ends[0], key, label, planned)];
  });
}

/** Posts that stand on ground the plan does not know. */
function outside(given: readonly GivenRow[], block: BlockGround, frame: Frame): readonly Finding[] {
  return given.flatMap(({ key, ends }) => {
    if (ends === null) return [];
    const [a, b] = [frame.toPlane(ends[0]), frame.toPlane(ends[1])];
    const isOnGround = block.outlines.some(({ rings }) => isInside(rings, (a[0] + b[0]) / 2, (a[1] + b[1]) / 2));
    return isOnGround ? [] : [givenRowOutside(ends[0], key)];
  });
}

function summed(
  computed: ComputedRows,
  rows: readonly Numbered[],
  block: BlockGround,
  frame: Frame,
): readonly Finding[] {
  const at = frame.toLonLat(planePoint(block.centre[0], block.centre[1]));
  if (rows.length === 0) return block.outlines.length === 0 ? [] : [noRow(at, block.block)];
  if (computed.shortPieces === 0) return [];
  return [shortPieces(at, block.block, computed.shortPieces, computed.shortLength_m)];
}

/** The rows that stand in a block: those that name it, and those that name none and lie in its ground (or anywhere, when it is the only one). */
export function givenRowsOf(
  block: BlockGround,
  blocks: readonly BlockGround[],
  given: readonly GivenRow[],
  frame: Frame,
): readonly GivenRow[] {
  return given.filter((row) => {
    if (row.block !== null) return row.block === block.block;
    if (blocks.length === 1) return true;
    if (row.ends === null) return block === blocks[0];
    const [a, b] = row.ends.map((at) => frame.toPlane(at));
    if (a === undefined || b === undefined) return false;
    const [x, y] = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
    const home = blocks.find(({ areas, isDrawn }) => {
      const isIn = ({ rings }: Outline) => isInside(rings, x, y);
      return isDrawn ? areas.some(isIn) : areas.length > 0 && areas.every(isIn);
    });
    return block === (home ?? blocks[0]);
  });
}

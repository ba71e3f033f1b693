import type { Finding } from "../finding.ts";
import { type Axes, turnPoint } from "../plane/axes.ts";
import { type PlanePoint, planePoint } from "../plane/coordinate.ts";
import type { Frame } from "../plane/frame.ts";
import type { GivenRow, RowSettings } from "../project/project.ts";
import { tapeDiffers } from "./findings.ts";
import type { RowDraft } from "./row-draft.ts";
import { rowLayout } from "./vines.ts";

/** A taped length this much off the map (and half a metre more) is spoken of. */
const tapeTolerance = 0.01;

/**
 * Puts the rows that stand already in place of the computed ones they lie on: nearer than half a row spacing, and overlapping along
 * the row. A given row that lies on none is added. Its taped length, if there is one, is its length.
 */
export function withStandingRows(
  computed: readonly RowDraft[],
  given: readonly GivenRow[],
  axes: Axes,
  frame: Frame,
  settings: RowSettings,
): { readonly rows: readonly RowDraft[]; readonly findings: readonly Finding[] } {
  const findings: Finding[] = [];
  let rows = [...computed];
  for (const standing of given) {
    if (standing.ends === null) continue;
    const draft = standingRow(
      standing.ends.map((at) => frame.toPlane(at)),
      standing,
      axes,
      settings,
    );
    if (draft === null) continue;
    const mapped_m = distance(draft.start, draft.end);
    if (isTapeOff(draft.length_m, mapped_m, 0)) {
      findings.push(tapeDiffers(standing.ends[0], standing.key, draft.length_m, mapped_m));
    }
    // Looked for among all computed rows: one that another standing row has replaced still tells which line this is.
    const replaced = computed.filter((row) => liesOn(draft, row, axes, settings.rowSpacing_m));
    const across_m = replaced[0]?.across_m ?? draft.across_m;
    rows = [...rows.filter((row) => !replaced.includes(row)), { ...draft, across_m }];
  }
  return { rows, findings };
}

/** True when a taped length is so far from the mapped one that one of them must be wrong. */
export function isTapeOff(taped_m: number, mapped_m: number, spare_m: number): boolean {
  return Math.abs(taped_m - mapped_m) > tapeTolerance * mapped_m + 0.5 + spare_m;
}

/** A row with its taped length: it keeps its start, and its end moves along it. */
export function withTapedLength(row: RowDraft, taped_m: number, given: string, settings: RowSettings): RowDraft {
  const mapped_m = distance(row.start, row.end);
  const share = mapped_m > 0 ? taped_m / mapped_m : 1;
  const end = planePoint(
    row.start[0] + (row.end[0] - row.start[0]) * share,
    row.start[1] + (row.end[1] - row.start[1]) * share,
  );
  const layout = standingLayout(taped_m, settings);
  const ends = { startLeftover_m: 0, endLeftover_m: 0, startCut: null, endCut: null };
  return { ...row, ...ends, end, length_m: taped_m, layout, given };
}

function standingRow(
  ends: readonly PlanePoint[],
  standing: GivenRow,
  axes: Axes,
  settings: RowSettings,
): RowDraft | null {
  const [a, b] = ends;
  if (a === undefined || b === undefined || distance(a, b) === 0) return null;
  const isForward = settings.firstSide === "left";
  const [start, end] = along(a, axes) <= along(b, axes) === isForward ? [a, b] : [b, a];
  const length_m = standing.tapedLength_m ?? distance(a, b);
  return {
    across_m: turnPoint(planePoint((a[0] + b[0]) / 2, (a[1] + b[1]) / 2), axes)[1],
    along_m: isForward ? along(start, axes) : -along(start, axes),
    start,
    end,
    length_m,
    layout: standingLayout(length_m, settings),
    gaps: [],
    startLeftover_m: 0,
    endLeftover_m: 0,
    startCut: null,
    endCut: null,
    given: standing.key,
  };
}

/** Posts that stand are not moved: the row is as long as it is, its vines centred or from the start. */
function standingLayout(length_m: number, settings: RowSettings) {
  const vines = settings.vines === "aligned" ? "centred" : settings.vines;
  const layout = rowLayout(length_m, { ...settings, vines, rowEnd: "all" }, 0);
  return layout ?? { from_m: 0, to_m: length_m, firstVine_m: 0, vines: 0, gridIndex: 0 };
}

function liesOn(standing: RowDraft, row: RowDraft, axes: Axes, spacing_m: number): boolean {
  const near = Math.abs(standing.across_m - row.across_m) <= spacing_m / 2;
  const [from, to] = extent(standing, axes);
  const [rowFrom, rowTo] = extent(row, axes);
  return near && Math.min(to, rowTo) > Math.max(from, rowFrom);
}

function extent(row: RowDraft, axes: Axes): readonly [number, number] {
  const a = along(row.start, axes);
  const b = along(row.end, axes);
  return a < b ? [a, b] : [b, a];
}

function along(at: PlanePoint, axes: Axes): number {
  return turnPoint(at, axes)[0];
}

function distance(a: PlanePoint, b: PlanePoint): number {
  return Math.hypot(b[0] - a[0], b[1] - a[1]);
}

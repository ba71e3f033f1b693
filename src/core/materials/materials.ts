import type { Drip } from "../drip/drip.ts";
import type { Finding } from "../finding.ts";
import { type Outcome, success } from "../outcome.ts";
import type { Block, MaterialSettings } from "../project/project.ts";
import type { Rows } from "../rows/rows.ts";
import type { Trellis, WireTotal } from "../trellis/trellis.ts";
import { coilsByLength, runLongerThanCoil, standingRowsCounted } from "./findings.ts";
import { orderOf, type Pack, packsOf } from "./packs.ts";
import { type VineLot, vineLots } from "./vine-lots.ts";

/** One line of the shopping list. */
export interface MaterialLine {
  /** What to ask for, such as "Wire, fruiting". */
  readonly item: string;
  /** With spares, before rounding to packages; pieces are whole. */
  readonly quantity: number;
  /** "m" or "pieces". */
  readonly unit: "m" | "pieces";
  /** Packages that cover the quantity; size in `unit`. Empty for things sold by the piece. */
  readonly packs: readonly Pack[];
  /** What it is for and how it was counted. */
  readonly purpose: string;
  /** For wire, to be shown as a gauge or in millimetres; null for everything else. */
  readonly diameter_mm: number | null;
}

export interface Materials {
  readonly lines: readonly MaterialLine[];
}

/**
 * The shopping list: wire and hose in coils, vines, posts, stakes, clips and emitters in bags, each with its spare and rounded up to
 * whole packages; things that are not needed are left out. Lengths in metres. Findings: materials/coils-by-length,
 * materials/run-longer-than-coil, materials/standing-rows-counted and those of the plantings.
 */
export function materials(
  rows: Rows,
  trellis: Trellis,
  drip: Drip,
  blocks: readonly Block[],
  settings: MaterialSettings,
): Outcome<Materials> {
  const stakeClips = trellis.rows.reduce((sum, row) => sum + row.stakeClips, 0);
  const hoseClips = drip.rows.reduce((sum, row) => sum + row.hoseClips, 0);
  const plantings = vineLots(rows.rows, blocks, settings.vineSpare_ratio);
  const clips = spare(settings.clipSpare_ratio);
  const lines: readonly MaterialLine[] = [
    ...trellis.wires.map((wire) => wireLine(wire, settings.wireCoil_m)),
    length("Drip hose", drip.lateral_m, settings.hoseCoil_m, "laterals, from the water end to past the last vine"),
    ...plantings.lots.map((lot) =>
      pieces(vineItem(lot, plantings.lots.length), orderOf(lot.withSpare, 0), null, `${lot.vines} planted, and spare`),
    ),
    ...postLines(rows, settings),
    pieces(
      "Stake clips",
      orderOf(stakeClips, settings.clipSpare_ratio),
      settings.stakeClipBag,
      `one a stake and fruiting wire${clips}`,
    ),
    pieces(
      "Hose clips",
      orderOf(hoseClips, settings.clipSpare_ratio),
      settings.hoseClipBag,
      `one a gap between vines and one at each end${clips}`,
    ),
    pieces(
      "Emitters",
      orderOf(drip.emitters, settings.emitterSpare_ratio),
      settings.emitterBag,
      `${drip.emitters} in the hose${spare(settings.emitterSpare_ratio)}`,
    ),
  ];
  return success({ lines: lines.filter((line) => line.quantity > 0) }, [
    ...coilFindings(trellis.wires, settings.wireCoil_m),
    ...standingFindings(rows),
    ...plantings.findings,
  ]);
}

function postLines(rows: Rows, settings: MaterialSettings): readonly MaterialLine[] {
  const endPosts = 2 * rows.rows.length;
  const linePosts = rows.rows.reduce((sum, row) => sum + row.linePosts, 0);
  const stakes = rows.rows.reduce((sum, row) => sum + row.stakes, 0);
  return [
    pieces(
      "End posts",
      endPosts === 0 ? 0 : endPosts + settings.endPostSpare,
      null,
      `two a row, and ${settings.endPostSpare} spare`,
    ),
    pieces(
      "Line posts",
      orderOf(linePosts, settings.linePostSpare_ratio),
      null,
      `${linePosts} in the rows${spare(settings.linePostSpare_ratio)}`,
    ),
    pieces("Training stakes", stakes, null, "no spare"),
  ];
}

function wireLine(wire: WireTotal, coil_m: number): MaterialLine {
  const line = length(`Wire, ${wire.purpose}`, wire.length_m, coil_m, `${wire.runs} runs, both tie-offs included`);
  return { ...line, diameter_mm: wire.diameter_mm };
}

function length(item: string, quantity_m: number, coil_m: number, purpose: string): MaterialLine {
  return { item, quantity: quantity_m, unit: "m", packs: packsOf(quantity_m, coil_m), purpose, diameter_mm: null };
}

function pieces(item: string, quantity: number, bag: number | null, purpose: string): MaterialLine {
  return {
    item,
    quantity,
    unit: "pieces",
    packs: bag === null ? [] : packsOf(quantity, bag),
    purpose,
    diameter_mm: null,
  };
}

function vineItem(lot: VineLot, lots: number): string {
  if (lot.variety === null) return lots === 1 ? "Vines" : "Vines, variety not chosen";
  return lot.rootstock === null ? `Vines, ${lot.variety}` : `Vines, ${lot.variety} on ${lot.rootstock}`;
}

function spare(ratio: number): string {
  return ratio === 0 ? "" : `, and ${Number((ratio * 100).toFixed(3))} % spare`;
}

function coilFindings(wires: readonly WireTotal[], coil_m: number): readonly Finding[] {
  if (wires.every((wire) => wire.length_m === 0)) return [];
  const long = wires.filter((wire) => wire.longestRun_m > coil_m);
  return [coilsByLength(), ...long.map((wire) => runLongerThanCoil(wire.purpose, wire.longestRun_m, coil_m))];
}

function standingFindings(rows: Rows): readonly Finding[] {
  const standing = rows.rows.filter((row) => row.given !== null).length;
  return standing === 0 ? [] : [standingRowsCounted(standing)];
}

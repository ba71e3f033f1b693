import type { Drip } from "../drip/drip.ts";
import { clipSuffix } from "../drip/hose-size.ts";
import type { WaterPart } from "../drip/watering.ts";
import { type Finding, listed } from "../finding.ts";
import type { Block, MaterialSettings, Wire } from "../project/project.ts";
import type { Rows } from "../rows/rows.ts";
import { wireMass_kgpm } from "../trellis/mechanics/steel.ts";
import type { Part } from "../trellis/part.ts";
import type { Trellis } from "../trellis/trellis.ts";
import type { Trench } from "../trench/trench.ts";
import { catalog, type ListedKind } from "./catalog.ts";
import { dripArticles, emitterSpec, hoseClipSpec, hoseSpec } from "./drip-articles.ts";
import type { Need } from "./need.ts";
import { trenchNeeds, waterNeeds } from "./part-needs.ts";
import { concreteBag_kg, partSpec, wireSpec } from "./spec.ts";
import { lotOf, vineLots } from "./vine-lots.ts";

/** Pieces of one row are those of its two ends. */
const rowEnds = 2;

/**
 * What every article is needed for: what lies in the trench, what the water takes beside it, then in the order of the catalog, then as first met. Findings are those of `vineLots`.
 */
export function needs(
  rows: Rows,
  trellis: Trellis,
  drip: Drip,
  blocks: readonly Block[],
  settings: MaterialSettings,
  trench: Trench | null,
  water: readonly WaterPart[],
): { readonly needs: readonly Need[]; readonly findings: readonly Finding[] } {
  const count = rows.rows.length;
  const parts = partSums(trellis, count);
  const plantings = vineLots(rows.rows, blocks, settings.vineSpare_ratio);
  const wires = wireSums(rows, trellis);
  const all: Need[] = [
    ...(trench === null ? [] : trenchNeeds(trench)),
    ...waterNeeds(water, count, trench),
    ...[...wires].map(([article, { wire, perRow }]) => {
      return wireNeed(article, wire, perRow, trellis);
    }),
    ...[...parts].map(([article, sum]) => partNeed(article, sum, trellis, blocks)),
    ...dripNeeds(rows, drip, blocks),
    ...plantings.lots.map((lot): Need => {
      const perRow = rows.rows.map((row) => (lotOf(lot, row, blocks) ? row.vines : 0));
      const stock = lot.rootstock === null ? "" : ` on ${lot.rootstock}`;
      return {
        ...counted("vine", perRow),
        article: lot.variety === null ? "vine" : `vine-${lot.variety}${stock === "" ? "" : `-on-${lot.rootstock}`}`,
        spec: [lot.variety === null ? "variety not chosen yet" : `${lot.variety}${stock}`],
        spare: { ratio: lot.withSpare / lot.vines - 1 },
      };
    }),
  ];
  const order = Object.keys(catalog);
  return {
    needs: all
      .filter(({ perRow }) => perRow.some((each) => each > 0))
      .sort((a, b) => order.indexOf(a.kind) - order.indexOf(b.kind)),
    findings: plantings.findings,
  };
}

interface PartSum {
  readonly part: Part;
  readonly perRow: number[];
}

function partSums(trellis: Trellis, rows: number): Map<string, PartSum> {
  const sums = new Map<string, PartSum>();
  trellis.rows.forEach(({ parts }, row) => {
    for (const { part, quantity: many } of parts) {
      const sum = sums.get(part.article) ?? { part, perRow: new Array<number>(rows).fill(0) };
      sum.perRow[row] = (sum.perRow[row] ?? 0) + many;
      sums.set(part.article, sum);
    }
  });
  return sums;
}

interface WireSum {
  readonly wire: Wire;
  readonly perRow: number[];
}

function wireSums(rows: Rows, trellis: Trellis): ReadonlyMap<string, WireSum> {
  const hung = new Map(trellis.blocks.map(({ block, wires }) => [block, wires]));
  const sums = new Map<string, WireSum>();
  rows.rows.forEach(({ block }, row) => {
    hung.get(block)?.forEach(({ wire, article }, w) => {
      const run = trellis.rows[row]?.runs[w];
      if (run === undefined) return;
      const sum = sums.get(article) ?? { wire, perRow: new Array<number>(rows.rows.length).fill(0) };
      sum.perRow[row] = (sum.perRow[row] ?? 0) + run.count * run.length_m;
      sums.set(article, sum);
    });
  });
  return sums;
}

function wireNeed(article: string, wire: Wire, hung_m: readonly number[], trellis: Trellis): Need {
  const total = trellis.wires.find((each) => each.article === article);
  return {
    article,
    kind: "wire",
    item: catalog.wire.item,
    spec: wireSpec(wire),
    unit: "m",
    diameter_mm: wire.diameter_mm,
    perRow: hung_m,
    isShared: false,
    pieces_m: [],
    spare: null,
    purpose: `${capitalized(listed(total?.purposes ?? []))} wire, ${total?.runs ?? 0} runs in ${rowsIn(hung_m)}, with both tie-offs`,
    mass_kg: wireMass_kgpm(wire),
  };
}

function partNeed(article: string, { part, perRow }: PartSum, trellis: Trellis, blocks: readonly Block[]): Need {
  const isWire = part.unit === "m" && part.diameter_mm !== null;
  return {
    article,
    kind: part.kind,
    item: catalog[part.kind].item,
    spec: partSpec(part, trellis, blocks),
    unit: part.unit,
    diameter_mm: isWire ? part.diameter_mm : null,
    perRow,
    isShared: false,
    pieces_m: part.unit === "m" ? endPieces(perRow) : [],
    spare: null,
    purpose: `${isWire ? `cut into ${endPieces(perRow).length} pieces, ` : ""}${catalog[part.kind].use}; ${rowsIn(perRow)}`,
    mass_kg: isWire
      ? wireMass_kgpm({ diameter_mm: part.diameter_mm ?? 0, coating: "unknown" })
      : part.kind === "concrete-bag"
        ? concreteBag_kg(blocks)
        : null,
  };
}

/** Hose of each kind, its clips by its thickness, and emitters that are punched in. */
function dripNeeds(rows: Rows, drip: Drip, blocks: readonly Block[]): readonly Need[] {
  const articles = dripArticles(blocks);
  const each = (of: (block: Block) => string | null, what: (row: Drip["rows"][number]) => number) => {
    const names = [...new Set(blocks.flatMap((block) => of(block) ?? []))];
    return names.flatMap((article) => {
      const own = blocks.filter((block) => of(block) === article);
      const [first] = own;
      if (first === undefined) return [];
      const perRow = rows.rows.map(({ block }, row) => {
        const taken = drip.rows[row];
        return taken !== undefined && own.some(({ id }) => id === block) ? what(taken) : 0;
      });
      return [{ article, settings: first.drip, perRow }];
    });
  };
  const hoses = each(
    ({ id }) => articles.get(id)?.hose ?? null,
    ({ lateral_m }) => lateral_m,
  );
  const clips = each(
    (block) => `hose-clip${clipSuffix(block.drip)}`,
    ({ hoseClips }) => hoseClips,
  );
  const emitters = each(
    ({ id }) => articles.get(id)?.emitter ?? null,
    (row) => row.emitters,
  );
  return [
    ...hoses.map(({ article, settings, perRow }): Need => {
      return {
        ...counted("hose", perRow),
        article,
        spec: hoseSpec(settings),
        unit: "m",
        purpose: `one lateral in each of ${rowsIn(perRow)}, with the overrun past the last vine and slack for the cold`,
      };
    }),
    ...clips.map(({ article, settings, perRow }) => {
      return { ...counted("hose-clip", perRow), article, spec: hoseClipSpec(settings) };
    }),
    ...emitters.map(({ article, settings, perRow }) => {
      return { ...counted("emitter", perRow), article, spec: emitterSpec(settings) };
    }),
  ];
}

/** A need of plain pieces. */
export function counted(kind: ListedKind, perRow: readonly number[]): Need {
  return {
    article: kind,
    kind,
    item: catalog[kind].item,
    spec: [],
    unit: "pieces",
    diameter_mm: null,
    perRow,
    isShared: false,
    pieces_m: [],
    spare: null,
    purpose: `${catalog[kind].use}; ${rowsIn(perRow)}`,
    mass_kg: null,
  };
}

function endPieces(perRow: readonly number[]): readonly number[] {
  return perRow.flatMap((length_m) => (length_m > 0 ? Array.from({ length: rowEnds }, () => length_m / rowEnds) : []));
}

function rowsIn(perRow: readonly number[]): string {
  const rows = perRow.filter((each) => each > 0).length;
  return rows === 1 ? "1 row" : `${rows} rows`;
}

function capitalized(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

import { planePoint } from "../plane/coordinate.ts";
import { linkAlleys } from "./alleys.ts";
import { addBends, outerEnds, rowsAround } from "./bends.ts";
import { type Clearance, createClearance } from "./clearance.ts";
import { cornersOf } from "./corners.ts";
import { addDrawn, type DrawnTee, type DrawnWay, drawnBetween, drawnTee } from "./drawn-lines.ts";
import { gatesOf } from "./gates.ts";
import { createGraphDraft, type GraphDraft } from "./graph-draft.ts";
import { headOf, type RowEnd, rowEnds } from "./heads.ts";
import { type Neighbours, neighboursOf } from "./neighbours.ts";
import { freeEnd, pushedEnds } from "./place-heads.ts";
import type { RouteJob } from "./route-job.ts";

/** Where a trench may run: a ladder of row ends and alleys, with the corners of what is in the way. */
export interface RouteGraph {
  readonly draft: GraphDraft;
  readonly clearance: Clearance;
  /** Nodes of the sources, in the job's order. */
  readonly sources: readonly number[];
  /** Node of each row end (start of row i at 2 i, its end at 2 i + 1); -1 where no trench can be. */
  readonly heads: Int32Array;
  readonly ends: readonly RowEnd[];
  /** Links from each row end to that of the neighbour on the next line; empty where there is no straight way. */
  readonly chains: readonly (readonly number[])[];
  readonly beside: Neighbours;
  readonly drawn: readonly DrawnWay[];
}

/** Neighbours that a place is linked with, where there is a straight way: enough for ways within 1 % of the shortest in the trials. */
const nearest = 16;
/** Of these, bends are looked for among themselves too: what is near among all is soon only one's own surroundings. */
const nearestFree = { few: 40, many: 12 } as const;
const manyFree = 400;
const nearestOfSource = 80;
/** So few places are linked with all that they have a straight way to. */
const fewNodes = 160;

/** The graph of a job. */
export function routeGraph(job: RouteJob): RouteGraph {
  const beside = neighboursOf(job.rows);
  const { ends, isUsable, tees, clearance } = placedEnds(job, beside);
  const draft = createGraphDraft(clearance);
  const sources = job.sources.map(({ xy }) => draft.node(xy));
  const heads = Int32Array.from(ends, (end, i) => (isUsable[i] ? draft.node(headOf(end)) : -1));
  const drawn = addDrawn(draft, job.drawn, tees, heads);
  const chains = heads.length === 0 ? [] : chainsOf(draft, heads, beside, tees, drawn);
  const alleys = linkAlleys(draft, job, ends, heads, beside, clearance);
  const outer = outerEnds(heads, chains, beside);
  const outerHeads = outer.map((i) => Number(heads[i]));
  const bends = addBends(draft, job, { ends, heads, alleys, outer, beside, clearance });
  const free = [...drawn.flatMap(({ nodes }) => nodes), ...outerHeads, ...[...bends.values()].flat()];
  const corners = cornersOf(job, clearance);
  for (let i = 0; i < corners.length; i += 2) free.push(draft.node(planePoint(corners[i] ?? 0, corners[i + 1] ?? 0)));
  const abreast = [...job.sources.map(({ xy }) => xy), ...outerHeads.map(draft.placeOf)];
  for (const { from, to, feature } of gatesOf(job, clearance, abreast)) {
    const [a, b] = [draft.node(from), draft.node(to)];
    draft.link(a, b, { crossing: feature }, 1, job.crossingAs_m);
    free.push(a, b);
  }
  const all = [...Array(draft.xy.length / 2).keys()];
  if (all.length <= fewNodes) draft.linkNearest(all, all, fewNodes);
  else {
    draft.linkNearest(free, all, nearest);
    // What is near among bends is far enough apart to get on.
    draft.linkNearest(free, free, free.length > manyFree ? nearestFree.many : nearestFree.few);
  }
  for (const source of sources) {
    const [x, y] = draft.placeOf(source);
    const exempt = clearance.exemptAt(x, y);
    draft.linkNearest([source], all, nearestOfSource, exempt);
    // Between rows the only ways out are the alleys beside it, however far their ends are.
    for (const row of rowsAround(job.rows, x, y, 2)) {
      const atEnds = [2 * row, 2 * row + 1].flatMap((end) => [Number(heads[end]), ...(bends.get(end) ?? [])]);
      const around = [...(alleys[row] ?? []), ...atEnds];
      for (const node of around) draft.linkIfClear(source, node, 1, exempt);
    }
  }
  return { draft, clearance, sources, heads, ends, chains, beside, drawn };
}

/** Where the trench crosses the lines of the rows: on drawn lines, else in the lane, as far as there is room. */
function placedEnds(job: RouteJob, beside: Neighbours) {
  const plain = rowEnds(job.rows);
  const tees = plain.map((end) => drawnTee(end, Math.max(0, -end.past_m), job.drawn));
  const pushed = pushedEnds(plain, job, beside).map((end, i): RowEnd => ({ ...end, ...pastOf(tees[i] ?? null) }));
  const rough = createClearance(job, pushed);
  const freed = pushed.map((end, i) => (tees[i] ? end : freeEnd(end, job, rough)));
  const ends = pushed.map((end, i) => freed[i] ?? end);
  return { ends, isUsable: freed.map((end) => end !== null), tees, clearance: createClearance(job, ends) };
}

function pastOf(tee: DrawnTee | null): Partial<RowEnd> {
  return tee === null ? {} : { past_m: tee.past_m };
}

/** Along a drawn line where both heads lie on it, else straight. */
function chainsOf(
  draft: GraphDraft,
  heads: Int32Array,
  beside: Neighbours,
  tees: readonly (DrawnTee | null)[],
  drawn: readonly DrawnWay[],
): readonly (readonly number[])[] {
  return Array.from(heads, (head, i): readonly number[] => {
    const row = Math.floor(i / 2);
    const next = Number((i % 2 === 0 ? beside.start : beside.end)[row]);
    if (head < 0 || next < 0) return [];
    const other = 2 * next + (i % 2);
    const [tee, otherTee] = [tees[i], tees[other]];
    const way = tee && otherTee?.line === tee.line ? drawn[tee.line] : undefined;
    if (way !== undefined) return drawnBetween(way, head, Number(heads[other]));
    const link = draft.linkIfClear(head, Number(heads[other]));
    return link < 0 ? [] : [link];
  });
}

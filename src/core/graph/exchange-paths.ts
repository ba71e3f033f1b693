import type { Graph, Link } from "./graph.ts";
import { createPathSearch } from "./shortest-paths.ts";

/** Less than this is no gain. */
const least = 1e-9;
/** Rounds over the paths; each only makes the tree cheaper. */
const mostRounds = 4;
/** The dearest paths of a round: short ones between neighbours have nothing to gain. */
const mostPaths = 60;

/**
 * A tree made cheaper by exchanging its paths: a path between two places that must be joined, or where the tree branches, is taken out, and
 * the two parts are joined again by the cheapest way there is. Known as key-path exchange. `mustJoin` are the nodes that the tree is for.
 */
export function withExchangedPaths(
  graph: Graph,
  links: readonly Link[],
  tree: readonly number[],
  mustJoin: ReadonlySet<number>,
): readonly number[] {
  const held = new Set(tree);
  for (let round = 0; round < mostRounds; round++) {
    let isBetter = false;
    for (const { path, cost } of keyPaths(links, held, mustJoin)) {
      // An exchange before may have taken some of it already.
      if (path.some((link) => !held.has(link))) continue;
      const found = exchanged(graph, links, held, path, cost);
      if (found === null) continue;
      for (const link of path) held.delete(link);
      for (const link of found) held.add(link);
      isBetter = true;
    }
    if (!isBetter) break;
  }
  return [...held];
}

/** The links of each path between key nodes: those that must be joined, and those with three links or more. */
function keyPaths(links: readonly Link[], held: ReadonlySet<number>, mustJoin: ReadonlySet<number>) {
  const at = linksAt(links, held);
  const isKey = (node: number): boolean => mustJoin.has(node) || (at.get(node)?.length ?? 0) !== 2;
  const paths: (readonly number[])[] = [];
  const done = new Set<number>();
  for (const [node, around] of at) {
    if (!isKey(node)) continue;
    for (const first of around) {
      if (done.has(first)) continue;
      const path: number[] = [];
      let from = node;
      for (let link: number | undefined = first; link !== undefined; ) {
        path.push(link);
        done.add(link);
        from = otherEnd(links, link, from);
        link = isKey(from) ? undefined : at.get(from)?.find((each) => !done.has(each));
      }
      paths.push(path);
    }
  }
  return paths
    .map((path) => ({ path, cost: costOf(links, path) }))
    .sort((a, b) => b.cost - a.cost)
    .slice(0, mostPaths);
}

function costOf(links: readonly Link[], path: readonly number[]): number {
  return path.reduce((sum, link) => sum + (links[link]?.cost ?? 0), 0);
}

/** A cheaper way to join what is left of the tree without a path; null when there is none. */
function exchanged(
  graph: Graph,
  links: readonly Link[],
  held: ReadonlySet<number>,
  path: readonly number[],
  cost: number,
): readonly number[] | null {
  const left = new Set(held);
  for (const link of path) left.delete(link);
  const at = linksAt(links, left);
  const first = links[path[0] ?? -1];
  const lastLink = links[path.at(-1) ?? -1];
  if (first === undefined || lastLink === undefined) return null;
  const inner = innerNodes(links, path);
  const begin = [first.a, first.b].find((node) => !inner.has(node));
  if (begin === undefined) return null;
  const one = partWith(begin, links, at);
  const ends = [first.a, first.b, lastLink.a, lastLink.b].filter((node) => !inner.has(node) && !one.has(node));
  const [end] = ends;
  if (end === undefined) return null;
  const other = partWith(end, links, at);
  const search = createPathSearch(graph);
  for (const node of one) search.begin(node);
  const target = search.next((node) => other.has(node));
  return target >= 0 && Number(search.cost[target]) < cost - least ? search.linksTo(target) : null;
}

/** Nodes inside a path, without its two ends. */
function innerNodes(links: readonly Link[], path: readonly number[]): ReadonlySet<number> {
  const count = new Map<number, number>();
  for (const link of path) {
    const one = links[link];
    if (one === undefined) continue;
    count.set(one.a, (count.get(one.a) ?? 0) + 1);
    count.set(one.b, (count.get(one.b) ?? 0) + 1);
  }
  return new Set([...count].flatMap(([node, many]) => (many > 1 ? [node] : [])));
}

function partWith(node: number, links: readonly Link[], at: ReadonlyMap<number, readonly number[]>): Set<number> {
  const part = new Set([node]);
  for (const each of part) for (const link of at.get(each) ?? []) part.add(otherEnd(links, link, each));
  return part;
}

function linksAt(links: readonly Link[], held: ReadonlySet<number>): ReadonlyMap<number, readonly number[]> {
  const at = new Map<number, number[]>();
  for (const link of held) {
    const one = links[link];
    if (one === undefined) continue;
    for (const node of [one.a, one.b]) {
      const known = at.get(node);
      if (known === undefined) at.set(node, [link]);
      else known.push(link);
    }
  }
  return at;
}

function otherEnd(links: readonly Link[], link: number, from: number): number {
  const one = links[link];
  return one === undefined ? from : one.a === from ? one.b : one.a;
}

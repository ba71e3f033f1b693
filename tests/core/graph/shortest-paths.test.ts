import { expect, test } from "vitest";
import { type Graph, graphOf, type Link } from "../../../src/core/graph/graph.ts";
import { createPathSearch } from "../../../src/core/graph/shortest-paths.ts";
import { bothWays, leastCosts } from "../../support/exact-tree.ts";
import { between, createRandom, wholeBetween } from "../../support/random.ts";

/** A square of four places with a way straight across that costs more than going round. */
const square: readonly Link[] = [
  { a: 0, b: 1, cost: 1 },
  { a: 1, b: 2, cost: 1 },
  { a: 2, b: 3, cost: 1 },
  { a: 3, b: 0, cost: 1 },
  { a: 0, b: 2, cost: 3 },
];

/** Cost from a node to every other, to the end of the search. */
function costsFrom(graph: Graph, node: number): Float64Array {
  const search = createPathSearch(graph);
  search.begin(node);
  search.next(() => false);
  return search.cost;
}

function randomLinks(seed: number, nodes: number, count: number): readonly Link[] {
  const random = createRandom(seed);
  return Array.from({ length: count }, () => ({
    a: wholeBetween(random, 0, nodes - 1),
    b: wholeBetween(random, 0, nodes - 1),
    cost: between(random, 0, 10),
  }));
}

test("the cheaper way round is taken, and its links are told last first", () => {
  const search = createPathSearch(graphOf(4, square));
  search.begin(0);
  expect(search.next((node) => node === 2)).toBe(2);
  expect(search.cost[2]).toBe(2);
  expect([
    [1, 0],
    [2, 3],
  ]).toContainEqual(search.linksTo(2));
});

test("where no way leads the cost is without end and nothing is found", () => {
  const graph = graphOf(3, [{ a: 0, b: 1, cost: 2 }]);
  const search = createPathSearch(graph);
  search.begin(0);
  expect(search.next((node) => node === 2)).toBe(-1);
  expect([...costsFrom(graph, 0)]).toEqual([0, 2, Infinity]);
});

test("a search that is begun at more places on the way finds the nearest place from any of them", () => {
  const line = [0, 1, 2, 3, 4].map((a): Link => ({ a, b: a + 1, cost: 1 }));
  const search = createPathSearch(graphOf(6, line));
  search.begin(0);
  expect(search.next((node) => node === 2)).toBe(2);
  search.begin(4);
  expect(search.next((node) => node === 5)).toBe(5);
  expect(search.cost[5]).toBe(1);
  expect(search.linksTo(5)).toEqual([4]);
});

test("costs are those of another search without a queue, over 50 random graphs", () => {
  for (let seed = 1; seed <= 50; seed++) {
    const links = randomLinks(seed, 30, 70);
    const costs = costsFrom(graphOf(30, links), 0);
    const other = leastCosts(
      bothWays(
        30,
        links.map(({ a, b, cost }) => [a, b, cost]),
      ),
      0,
    );
    costs.forEach((cost, node) => {
      expect(cost).toBeCloseTo(other[node] ?? Number.NaN, 9);
    });
  }
});

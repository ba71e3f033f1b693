import { describe, expect, it } from "vitest";
import { bothWays, exactTreeCost, type Graph, leastCosts } from "../support/exact-tree.ts";
import { between, createRandom, type Random, wholeBetween } from "../support/random.ts";

const tolerance = 1e-9;

/** Root 0; corners of a star: 1, 2, 3; its middle: 4. */
const star = bothWays(5, [
  [0, 4, 1],
  [4, 1, 1],
  [4, 2, 1],
  [4, 3, 1],
  [0, 1, 1.9],
  [1, 2, 1.9],
  [2, 3, 1.9],
]);

describe("least costs", () => {
  it("are sums along the cheapest way, and infinite where none leads", () => {
    expect([...leastCosts(star, 0)]).toEqual([0, 1.9, 2, 2, 1]);
    expect([...leastCosts([[{ to: 1, cost: 2 }], []], 1)]).toEqual([Infinity, 0]);
  });
});

describe("the exact tree", () => {
  it("of no group costs nothing, of one group the way to its nearest node", () => {
    expect(exactTreeCost(star, 0, [])).toBe(0);
    expect(exactTreeCost(star, 0, [[2, 1]])).toBe(1.9);
  });

  it("goes over a middle that belongs to no group where that is cheaper", () => {
    // Over the middle 1 + 1 + 1 + 1; along the corners 3 * 1.9.
    expect(exactTreeCost(star, 0, [[1], [2], [3]])).toBeCloseTo(4, 9);
  });

  it("takes of each group the node that suits the others", () => {
    // Group {1, 5}: 5 is nearer to the root, but 1 lies on the way to 2.
    const line = bothWays(6, [
      [0, 1, 3],
      [1, 2, 3],
      [0, 5, 2],
    ]);
    expect(exactTreeCost(line, 0, [[1, 5]])).toBe(2);
    expect(exactTreeCost(line, 0, [[1, 5], [2]])).toBe(6);
  });

  it("keeps to arcs that lead one way", () => {
    const oneWay: Graph = [[{ to: 1, cost: 1 }], [{ to: 2, cost: 1 }], [{ to: 0, cost: 1 }]];
    expect(exactTreeCost(oneWay, 0, [[2]])).toBe(2);
    expect(exactTreeCost(oneWay, 2, [[1]])).toBe(2);
  });

  it("is infinite when a group cannot be got to", () => {
    expect(exactTreeCost(bothWays(3, [[0, 1, 1]]), 0, [[1], [2]])).toBe(Infinity);
  });

  it("costs what trying every set of ways finds, on small random graphs", () => {
    const random = createRandom(71);
    for (let n = 0; n < 60; n++) {
      const ways = randomWays(random, 6, 9);
      const groups = Array.from({ length: wholeBetween(random, 1, 3) }, () =>
        Array.from({ length: wholeBetween(random, 1, 2) }, () => wholeBetween(random, 0, 5)),
      );
      const found = exactTreeCost(bothWays(6, ways), 0, groups);
      const tried = cheapestSet(ways, groups);
      expect(found === tried || Math.abs(found - tried) < tolerance, `graph ${n}: ${found}, tried ${tried}`).toBe(true);
    }
  });
});

type Way = readonly [from: number, to: number, cost: number];

function randomWays(random: Random, nodes: number, count: number): readonly Way[] {
  return Array.from({ length: count }, () => {
    const from = wholeBetween(random, 0, nodes - 1);
    return [from, (from + wholeBetween(random, 1, nodes - 1)) % nodes, between(random, 1, 10)] as const;
  });
}

/** By brute force: the cheapest of all sets of ways that join a node of every group to node 0. */
function cheapestSet(ways: readonly Way[], groups: readonly (readonly number[])[]): number {
  let least = Infinity;
  for (let set = 0; set < 2 ** ways.length; set++) {
    const taken = ways.filter((_, i) => (set >> i) % 2 === 1);
    const reached = new Set([0]);
    for (let size = 0; size < reached.size; ) {
      size = reached.size;
      for (const [from, to] of taken) {
        if (reached.has(from)) reached.add(to);
        if (reached.has(to)) reached.add(from);
      }
    }
    if (groups.every((group) => group.some((node) => reached.has(node)))) {
      least = Math.min(
        least,
        taken.reduce((sum, [, , cost]) => sum + cost, 0),
      );
    }
  }
  return least;
}

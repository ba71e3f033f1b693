/** One bracket of well-known text: `UNIT["Metre",1]` has the keyword UNIT, the texts and numbers in it, and the brackets in it. */
export interface WktNode {
  /** In capitals. */
  readonly keyword: string;
  /** What stands in it outright, in order: quoted texts without their marks, numbers and bare words as they are. */
  readonly values: readonly string[];
  readonly nodes: readonly WktNode[];
}

/** Definitions of systems take some 1500 letters; a text of this length is none. */
const longest = 20_000;
const deepest = 20;

/** The tree of a well-known text (OGC 01-009 and 18-010, square or round brackets); null when it is none, is cut off, or nests too deep. */
export function wktTree(text: string): WktNode | null {
  if (text.length > longest) return null;
  const tokens = text.replace(/^﻿/, "").match(/"(?:[^"]|"")*"|[[\](),]|[^\s[\](),"]+/g) ?? [];
  const root = nodeFrom(tokens, 0, 0);
  return root !== null && root.next === tokens.length ? root.node : null;
}

function nodeFrom(
  tokens: readonly string[],
  first: number,
  depth: number,
): { readonly node: WktNode; readonly next: number } | null {
  const keyword = tokens[first] ?? "";
  const open = tokens[first + 1];
  if (depth > deepest || !/^[A-Za-z_]\w*$/.test(keyword) || (open !== "[" && open !== "(")) return null;
  const close = open === "[" ? "]" : ")";
  const values: string[] = [];
  const nodes: WktNode[] = [];
  let next = first + 2;
  for (;;) {
    const token = tokens[next];
    if (token === undefined || "[](),".includes(token)) return null;
    const after = tokens[next + 1];
    if (after === "[" || after === "(") {
      const inner = nodeFrom(tokens, next, depth + 1);
      if (inner === null) return null;
      nodes.push(inner.node);
      next = inner.next;
    } else {
      values.push(token.startsWith('"') ? token.slice(1, -1).replaceAll('""', '"') : token);
      next += 1;
    }
    const mark = tokens[next];
    if (mark === close) return { node: { keyword: keyword.toUpperCase(), values, nodes }, next: next + 1 };
    if (mark !== ",") return null;
    next += 1;
  }
}

/** The first bracket in a node with one of these keywords; null without one. */
export function child(node: WktNode, keywords: readonly string[]): WktNode | null {
  return node.nodes.find(({ keyword }) => keywords.includes(keyword)) ?? null;
}

import type { FirstRunSheet } from "../../core/sheets/first-run.ts";
import { escaped } from "../../core/sheets/svg-text.ts";

const style = `@page{margin:14mm}body{color:#000;font:12pt/1.4 sans-serif;margin:0}h1{font-size:18pt;margin:0 0 4mm}li{margin:1.5mm 0}
table{border-collapse:collapse;margin:4mm 0;width:100%}th,td{border:.4mm solid #000;padding:2mm;text-align:left}tr{break-inside:avoid}
.found{width:22mm}`;

/** The check of the first run as a page to print, with room to write beside each number. */
export function firstRunPage({ title, steps, checks, cautions }: FirstRunSheet): string {
  const most = checks.reduce((cups, each) => Math.max(cups, each.cups.length), 0);
  const cells = (tag: "th" | "td", texts: readonly string[]) =>
    texts
      .map((each) => `<${tag}>${escaped(each)}</${tag}><${tag} class="found">${tag === "th" ? "found" : ""}</${tag}>`)
      .join("");
  const head = [...Array(most).keys()].map((i) =>
    i === most - 1 ? "last vine" : i === 0 ? "first vine" : "middle vine",
  );
  const rows = checks.map(({ set, row, cups, tail }) => {
    const volumes = head.map((_, i) => {
      const cup = cups[i];
      return cup ? `${cup.volume} (emitter ${cup.emitter})` : "";
    });
    return `<tr><td>${escaped(set)}</td><td>${escaped(row)}</td>${cells("td", [...volumes, tail])}</tr>`;
  });
  return `<html lang="en"><head><title>${escaped(title)}</title><style>${style}</style></head><body><h1>${escaped(title)}</h1>
<ol>${list(steps)}</ol>
<table><thead><tr><th>Set</th><th>Row</th>${cells("th", [...head, "pressure at the far end"])}</tr></thead><tbody>${rows.join("")}</tbody></table>
<ul>${list(cautions)}</ul></body></html>`;
}

function list(sentences: readonly string[]): string {
  return sentences.map((each) => `<li>${escaped(each)}</li>`).join("");
}

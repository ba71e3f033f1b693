import type { RowSide, SidePost } from "../../core/sheets/row-side.ts";

export interface StationLine {
  readonly station_m: number;
  readonly what: string;
}

/** Everything that stands in a row and at its ends, in the order it is met; what stands before the start has a station below 0. */
export function stationsOf(side: RowSide): readonly StationLine[] {
  const lines: StationLine[] = [
    ...side.posts.map(({ station_m, kind }) => ({ station_m, what: postName(side, station_m, kind) })),
    ...side.ends.flatMap(({ end, kind, tie, brace }) => [
      ...(tie === null
        ? []
        : [
            {
              station_m: tie.to_m,
              what: `${kind === "buried-anchor" ? "buried anchor" : "anchor"}, ${end} of the row`,
            },
          ]),
      ...(brace === null || kind === "h-brace"
        ? []
        : [{ station_m: brace.to_m, what: `foot of the brace, ${end} of the row` }]),
    ]),
    ...side.vines.map(({ station_m }, i) => {
      const stakes = side.stakes.filter((stake) => stake.station_m === station_m).length;
      const emitters = side.emitters.find((emitter) => emitter.station_m === station_m)?.count ?? 0;
      const beside = [count(stakes, "stake"), count(emitters, "emitter")].filter(Boolean);
      return { station_m, what: [`vine ${i + 1}`, ...beside].join(", ") };
    }),
  ];
  return lines.sort((a, b) => a.station_m - b.station_m);
}

function postName(side: RowSide, station_m: number, kind: SidePost["kind"]): string {
  if (kind === "line") return "line post";
  if (kind === "brace") return "brace post";
  const end = station_m === 0 ? "start" : "end";
  return side.hose?.waterEnd === end ? `end post, ${end} of the row, water comes in` : `end post, ${end} of the row`;
}

function count(number: number, noun: string): string {
  return number === 0 ? "" : number === 1 ? noun : `${number} ${noun}s`;
}

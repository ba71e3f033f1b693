import type { RowSide } from "../../core/sheets/row-side.ts";

export interface StationLine {
  readonly station_m: number;
  readonly what: string;
}

/** Everything that stands in a row, in the order it is met from the start. */
export function stationsOf(side: RowSide): readonly StationLine[] {
  const lines: StationLine[] = [
    ...side.posts.map(({ station_m, kind }) => ({ station_m, what: postName(side, station_m, kind) })),
    ...side.vines.map(({ station_m }, i) => {
      const stakes = side.stakes.filter((stake) => stake.station_m === station_m).length;
      const emitters = side.emitters.find((emitter) => emitter.station_m === station_m)?.count ?? 0;
      const beside = [count(stakes, "stake"), count(emitters, "emitter")].filter(Boolean);
      return { station_m, what: [`vine ${i + 1}`, ...beside].join(", ") };
    }),
  ];
  return lines.sort((a, b) => a.station_m - b.station_m);
}

function postName(side: RowSide, station_m: number, kind: "end" | "line"): string {
  if (kind === "line") return "line post";
  const end = station_m === 0 ? "start" : "end";
  return side.hose?.waterEnd === end ? `end post, ${end} of the row, water comes in` : `end post, ${end} of the row`;
}

function count(number: number, noun: string): string {
  return number === 0 ? "" : number === 1 ? noun : `${number} ${noun}s`;
}

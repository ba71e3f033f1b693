import { formatQuantity, type UnitSystem } from "../units.ts";
import type { RowSide } from "./row-side.ts";
import type { SideEnd } from "./side-ends.ts";

/** What a drawing of a row's side shows, in a sentence or two. */
export function sideInWords(side: RowSide, units: UnitSystem): string {
  const length = (value_m: number) => formatQuantity("length", value_m, units);
  const linePosts = side.posts.filter(({ kind }) => kind === "line").length;
  const [first] = side.ends;
  const ends = first === undefined ? "" : ` ${endInWords(first, side, units)}`;
  return `Row ${side.row} from its side: ${length(side.length_m)} long, ${counted(side.vines.length, "vine")}, ${counted(linePosts, "line post")}, ${counted(side.wires.length, "wire")}.${ends}`;
}

/** How the drawing is to be read: its scales, sag, and what of it is not planned. */
export function sideReading(side: RowSide, raised: number, units: UnitSystem): readonly string[] {
  const sag_m = Math.max(0, ...side.wires.flatMap(({ sags_m }) => sags_m));
  return [
    Math.abs(raised - 1) < 0.005
      ? "Lengths and heights in one scale."
      : `Lengths in one scale, heights drawn ${raised >= 10 ? raised.toFixed(0) : raised.toFixed(1)} times as large.`,
    ...(sag_m === 0
      ? []
      : [
          `Sag of the wires at their set tension${side.sagFactor === 1 ? "" : `, drawn ${side.sagFactor} times as large`}; the most is ${formatQuantity("length", sag_m, units)}.`,
        ]),
    ...(side.ground.kind === "unknown"
      ? ["Spot heights do not reach over the whole row, so the ground is drawn level."]
      : []),
    "Start on the left.",
    ...(side.ends.some(({ tie }) => tie !== null)
      ? ["How deep an anchor goes is not planned: its maker or a pull test tells."]
      : []),
  ];
}

const names: Readonly<Record<SideEnd["kind"], string>> = {
  vertical: "upright end posts tied back to anchors",
  leaning: "leaning end posts tied back to anchors",
  "h-brace": "H-braces",
  "slant-brace": "slant braces",
  "inside-brace": "inside braces",
  "buried-anchor": "end posts tied back to buried anchors",
  single: "single end posts",
};

function endInWords({ kind, end, tie, brace }: SideEnd, side: RowSide, units: UnitSystem): string {
  const foot_m = end === "start" ? 0 : side.length_m;
  const length = (to_m: number) => formatQuantity("length", Math.abs(to_m - foot_m), units);
  const where = tie ? `, anchors ${length(tie.to_m)} out` : brace ? `, ${length(brace.to_m)} into the row` : "";
  return `It ends in ${names[kind]}${where}.`;
}

function counted(number: number, noun: string): string {
  return `${number.toLocaleString("en-US")} ${noun}${number === 1 ? "" : "s"}`;
}

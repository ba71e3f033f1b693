import { branchInWords, pipesInWords } from "../trench/mark-in-words.ts";
import type { TrenchMark } from "../trench/trench-marks.ts";
import { formatQuantity, text, type UnitSystem } from "../units.ts";
import { areRowsAllWritten } from "./trench-met.ts";
import type { TrenchProfile } from "./trench-profile.ts";
import type { TrenchScale, TrenchZoom } from "./trench-scale.ts";

/** What a drawing of a branch of the trench shows, in a sentence or two. */
export function trenchInWords(profile: TrenchProfile, units: UnitSystem): string {
  const { branch, length_m, slopeLength_m, least_m, deepest_m } = profile;
  const length = (value_m: number) => formatQuantity("length", value_m, units);
  const [least, deepest] = [length(least_m), length(deepest_m)];
  const parts = [
    `${length(length_m)} long`,
    ...(slopeLength_m === null ? [] : [`${length(slopeLength_m)} along the ground`]),
    `${least === deepest ? deepest : `${least} to ${deepest}`} to dig`,
    ...counts(profile.marks),
  ];
  return `The trench of ${branchInWords(branch)} from its side: ${parts.join(", ")}.`;
}

const names: readonly (readonly [kind: TrenchMark["kind"], one: string])[] = [
  ["tee", "row tee"],
  ["branch", "branch"],
  ["bend", "bend"],
  ["crossing", "crossing"],
  ["low", "low point"],
  ["high", "high point"],
  ["valve", "valve"],
];

function counts(marks: readonly TrenchMark[]): readonly string[] {
  return names.flatMap(([kind, one]) => {
    const number = marks.filter(
      (mark) => mark.kind === kind && !(mark.kind === "bend" && mark.elbows.length === 0),
    ).length;
    if (number === 0) return [];
    return [`${number} ${one}${number === 1 ? "" : one.endsWith("ch") ? "es" : "s"}`];
  });
}

/** How the drawing is to be read: its scales, its lines, and what of it is not known. */
export function trenchReading(
  profile: TrenchProfile,
  scale: TrenchScale,
  zoom: TrenchZoom,
  every: number,
  units: UnitSystem,
): readonly string[] {
  const length = (value_m: number) => formatQuantity("length", value_m, units);
  const { raised, ratio } = scale;
  const lengths = zoom === "whole" ? "Lengths in one scale" : `Lengths 1:${Math.round(ratio)}`;
  const unknown = unknownStretches(profile).map(([from_m, to_m]) => `${length(from_m)} to ${length(to_m)}`);
  const most_m = profile.ponds.reduce((deep_m, { level_m, lowest_m }) => Math.max(deep_m, level_m - lowest_m), 0);
  return [
    raised === 1 ? `${lengths}, heights the same.` : `${lengths}, heights drawn ${raised} times as large.`,
    "Upstream end on the left. Upper line the ground, lower line the bottom of the trench, between them the pipe.",
    ...pipesRead(profile, units),
    ...(profile.ground === "unknown"
      ? ["No heights are known here, so the ground is drawn level, with a broken line: only the depth to dig holds."]
      : profile.ground === "partly"
        ? [`The ground is not known at ${unknown.join(", ")}: it is drawn level there, with a broken line.`]
        : []),
    ...(most_m === 0
      ? []
      : [
          `Hatched: water that would stand in the open trench, at most ${formatQuantity("length", most_m, units, units === "us" ? 1 : 2)} deep.`,
        ]),
    ...(areRowsAllWritten(profile, scale) ? [] : ["Every tee is drawn; not every row has room for its number."]),
    ...(every === 1
      ? []
      : [`Every ${every}${every === 2 ? "nd" : "th"} station is written; the list has all of them.`]),
  ];
}

/** What is laid, from the upstream end. */
function pipesRead({ pipes }: TrenchProfile, units: UnitSystem): readonly string[] {
  if (pipes.length === 0) return [];
  const told = pipes.map(({ to_m, pipes: abreast }) => {
    return `up to ${formatQuantity("length", to_m, units)} ${text(pipesInWords(abreast), units)}`;
  });
  return [`Laid from the upstream end: ${told.join("; ")}.`];
}

/** From and to where the ground is not known. */
function unknownStretches({ line }: TrenchProfile): readonly (readonly [from_m: number, to_m: number])[] {
  const found: [number, number][] = [];
  line.slice(1).forEach((to, i) => {
    const from = line[i] ?? to;
    if (from.isKnown && to.isKnown) return;
    const last = found.at(-1);
    if (last !== undefined && last[1] === from.station_m) last[1] = to.station_m;
    else found.push([from.station_m, to.station_m]);
  });
  return found;
}

/**
 * Goes wherever the drawing goes on its own. Depths at which rules begin: 29 CFR 1926.651 (c)(2), (j)(2) and 1926.652 (a)(1).
 */
export function trenchCaution(units: UnitSystem): string {
  const length = (feet: number, metres: string) => (units === "us" ? `${feet} ft` : metres);
  return (
    "A planning aid. Call before you dig and have buried lines marked. A trench can cave in at any depth: nobody works in it alone, spoil stays " +
    `${length(2, "0.6 m")} back; from ${length(4, "1.2 m")} deep a ladder within reach, from ${length(5, "1.5 m")} a protective system ` +
    "(29 CFR 1926 subpart P); your local code goes before."
  );
}

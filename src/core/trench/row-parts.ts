import { type HoseSize, hoseSuffix, riserSuffix } from "../drip/hose-size.ts";
import { type Phrase, quantity, say } from "../finding.ts";
import { perRow } from "./part.ts";
import { outletWords, pipeName, socketWords } from "./pipe-words.ts";
import type { TrenchPart } from "./trench.ts";
import { bySize, type TappedTee, type TrenchLine } from "./trench-line.ts";

/** What takes a row's water from the main line up to its hose. */
export function rowParts(line: TrenchLine): readonly TrenchPart[] {
  const of = (tees: readonly TappedTee[]) => ({ rows: line.rows, tees });
  return [
    ...bySize(line.tees).map(({ pipe, own }): TrenchPart => {
      return {
        ...perRow("row-tee", of(own), () => 1, "one where each row takes its water"),
        article: `row-tee-${pipe.size}`,
        spec: [...pipeName(pipe), `, reducing: ${socketWords[pipe.joint]}, ${outletWords} on the branch`],
      };
    }),
    {
      ...perRow(
        "swing-joint",
        line,
        ({ lead_m }) => (lead_m > 0 ? 1 : 0),
        "two threaded elbows at a tee outside the end post, so that a wheel over it breaks nothing",
      ),
      spec: ["3/4 in (25 mm), male threads"],
    },
    ...byHose(line.tees, riserSuffix).map(([suffix, hose, own]): TrenchPart => {
      const riser = perRow(
        "riser",
        of(own),
        ({ riser_m }) => riser_m,
        "from the pipe to the end post in the ground and up to the drip wire, one a row",
      );
      return {
        ...riser,
        article: `riser${suffix}`,
        unit: "m",
        spec: [...say`polyethylene pipe, `, ...riserName(hose), ", black or painted against the sun"],
        pieces_m: (riser.perRow ?? []).filter((length_m) => length_m > 0),
      };
    }),
    ...byHose(line.tees, (hose) => `${riserSuffix(hose)}${hoseSuffix(hose)}`).map(
      ([suffix, hose, own]): TrenchPart => ({
        ...perRow("riser-adapter", of(own), () => 1, "joins each riser to its hose"),
        article: `riser-adapter${suffix}`,
        spec: [
          ...riserName(hose),
          ...say` to hose of ${quantity("diameter", hose.hoseInside_mm)} inside and ${quantity("diameter", hose.hoseOutside_mm)} outside`,
        ],
      }),
    ),
  ];
}

function riserName(hose: HoseSize): Phrase {
  return riserSuffix(hose) === "" ? ["3/4 in (25 mm)"] : say`${quantity("diameter", hose.riserInside_mm)} inside`;
}

function byHose(
  tees: readonly TappedTee[],
  name: (hose: HoseSize) => string,
): readonly (readonly [suffix: string, hose: HoseSize, own: readonly TappedTee[]])[] {
  return [...new Set(tees.map(({ hose }) => name(hose)))].flatMap((suffix) => {
    const own = tees.filter(({ hose }) => name(hose) === suffix);
    return own[0] === undefined ? [] : [[suffix, own[0].hose, own] as const];
  });
}

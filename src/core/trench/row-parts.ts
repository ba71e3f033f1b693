import { quantity, say } from "../finding.ts";
import { perRow } from "./part.ts";
import { outletWords, pipeName, socketWords } from "./pipe-words.ts";
import type { TrenchPart } from "./trench.ts";
import type { TrenchLine } from "./trench-line.ts";

/** Nominal 1/2 in hose. Common practice, no source; makers differ. */
const hose_mm = { inside: 15.24, outside: 17.78 };

/** What takes a row's water from the main line up to its hose. */
export function rowParts(line: TrenchLine): readonly TrenchPart[] {
  const { pipe } = line.settings;
  const riser = perRow(
    "riser",
    line,
    ({ riser_m }) => riser_m,
    "from the pipe to the end post in the ground and up to the drip wire, one a row",
  );
  return [
    {
      ...perRow("row-tee", line, () => 1, "one where each row takes its water"),
      article: `row-tee-${pipe.size}`,
      spec: [...pipeName(pipe), `, reducing: ${socketWords[pipe.joint]}, ${outletWords} on the branch`],
    },
    {
      ...perRow(
        "swing-joint",
        line,
        ({ lead_m }) => (lead_m > 0 ? 1 : 0),
        "two threaded elbows at a tee outside the end post, so that a wheel over it breaks nothing",
      ),
      spec: ["3/4 in (25 mm), male threads"],
    },
    {
      ...riser,
      unit: "m",
      spec: ["polyethylene pipe, 3/4 in (25 mm), black or painted against the sun"],
      pieces_m: (riser.perRow ?? []).filter((length_m) => length_m > 0),
    },
    {
      ...perRow("riser-adapter", line, () => 1, "joins each riser to its hose"),
      spec: say`3/4 in (25 mm) to hose of ${quantity("diameter", hose_mm.inside)} inside and ${quantity("diameter", hose_mm.outside)} outside`,
    },
  ];
}

import type { Plan } from "../../core/plan.ts";
import type { TrenchProfile } from "../../core/sheets/trench-profile.ts";
import { branchLengthAccount, branchSlopeAccount } from "../../core/trench/branch-accounts.ts";
import { depthAccount } from "../../core/trench/earth-accounts.ts";
import { branchInWords } from "../../core/trench/mark-in-words.ts";
import { formatQuantity } from "../../core/units.ts";
import { Figure } from "../figure/figure.tsx";
import { useStore } from "../store-context.ts";
import { count } from "../strip/count.ts";

/** A branch in a line: how long, how deep, how many rows. */
export function TrenchFacts({
  plan,
  profile,
  branch,
}: {
  readonly plan: Plan;
  readonly profile: TrenchProfile;
  readonly branch: number;
}) {
  const units = useStore().units.value;
  const { trench, mainline, project } = plan;
  const route = mainline?.route ?? null;
  if (trench === null || route === null) return null;
  const length = (value_m: number) => formatQuantity("length", value_m, units);
  const rows = profile.marks.filter(({ kind }) => kind === "tee").length;
  const name = branchInWords(profile.branch);
  const [least, deepest] = [length(profile.least_m), length(profile.deepest_m)];
  return (
    <p>
      {name.charAt(0).toUpperCase() + name.slice(1)}:{" "}
      <Figure
        value={length(profile.length_m)}
        label={`of ${name}`}
        account={() => branchLengthAccount(route, trench.branches[branch]?.points ?? [])}
      />
      {profile.slopeLength_m !== null && (
        <>
          ,{" "}
          <Figure
            value={length(profile.slopeLength_m)}
            label={`of ${name} along the ground`}
            account={() => branchSlopeAccount(profile.known)}
          />{" "}
          along the ground
        </>
      )}
      , {count(rows, "row tee")},{" "}
      <Figure
        value={least === deepest ? deepest : `${least} to ${deepest}`}
        label="to dig"
        account={() => depthAccount(trench, project.trench)}
      />{" "}
      to dig
    </p>
  );
}

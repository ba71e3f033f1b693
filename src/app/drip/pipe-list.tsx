import { pipeLengthAccount } from "../../core/drip/pipe-accounts.ts";
import type { PipeLine } from "../../core/drip/watering.ts";
import { pipeSizes } from "../../core/hydraulics/pipe-sizes.ts";
import type { PipeSettings } from "../../core/project/project.ts";
import { formatQuantity } from "../../core/units.ts";
import { Figure } from "../figure/figure.tsx";
import { useStore } from "../store-context.ts";
import { StagePart } from "../strip/stage-part.tsx";
import { wholeLength } from "../strip/whole-length.ts";

/** What a pipe is called: by its table, else by its diameters. */
export function usePipeName(): (pipe: PipeSettings) => string {
  const units = useStore().units.value;
  return ({ size, outside_mm }) =>
    pipeSizes.find((each) => each.size === size)?.name ??
    `${size}, ${formatQuantity("diameter", outside_mm, units)} outside`;
}

/** The pipe in the trench, a line a size of each line of pipe. */
export function PipeList({ pipes }: { readonly pipes: readonly PipeLine[] }) {
  const units = useStore().units.value;
  const nameOf = usePipeName();
  if (pipes.length === 0) return null;
  const whole_m = pipes.reduce((sum_m, { length_m }) => sum_m + length_m, 0);
  const lines = [...new Set(pipes.map(({ line }) => line))].sort((one, other) => one - other);
  return (
    <StagePart name="Pipe in the trench" told={wholeLength(whole_m, units)}>
      <table class="drip-table">
        <caption class="unseen">Pipe in the trench</caption>
        <thead>
          <tr>
            <th scope="col">Line</th>
            <th scope="col">Pipe</th>
            <th scope="col">Length</th>
          </tr>
        </thead>
        <tbody>
          {lines.flatMap((line) =>
            sizesOf(line).map(({ pipe, length_m, runs }, i) => (
              <tr key={`${line} ${pipe.size}`}>
                <th scope="row" class={i > 0 ? "repeated" : undefined}>
                  {line === 0 ? "Main line" : `To set ${line}`}
                </th>
                <td>{nameOf(pipe)}</td>
                <td>
                  <Figure
                    value={wholeLength(length_m, units)}
                    label={`of ${nameOf(pipe)}`}
                    account={() => pipeLengthAccount(runs)}
                  />
                </td>
              </tr>
            )),
          )}
        </tbody>
      </table>
    </StagePart>
  );

  /** Sizes of a line, the widest (nearest the source) first, lengths of branches added. */
  function sizesOf(line: number) {
    const bySize = new Map<string, { readonly pipe: PipeSettings; readonly runs: readonly PipeLine[] }>();
    for (const run of pipes) {
      const { line: own, pipe } = run;
      if (own === line) bySize.set(pipe.size, { pipe, runs: [...(bySize.get(pipe.size)?.runs ?? []), run] });
    }
    return [...bySize.values()]
      .map((each) => ({ ...each, length_m: each.runs.reduce((sum_m, { length_m }) => sum_m + length_m, 0) }))
      .sort((one, other) => other.pipe.inside_mm - one.pipe.inside_mm);
  }
}

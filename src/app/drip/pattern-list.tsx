import { patternPipeAccount, patternPriceAccount, valvesAccount } from "../../core/drip/pipe-accounts.ts";
import type { PatternCost } from "../../core/drip/watering.ts";
import type { SetSettings } from "../../core/project/water-settings.ts";
import { changeSetting } from "../commands/change-setting.ts";
import { Figure } from "../figure/figure.tsx";
import { money } from "../materials/money.ts";
import { useStore } from "../store-context.ts";
import { grouped } from "../strip/count.ts";
import { StagePart } from "../strip/stage-part.tsx";
import { wholeLength } from "../strip/whole-length.ts";
import { patternNames } from "./set-fields.tsx";

interface PatternListProps {
  readonly patterns: readonly PatternCost[];
  readonly sets: SetSettings;
  readonly currency: string | null;
}

/** What each pattern of valves comes to; one of them is taken, the person picks. */
export function PatternList({ patterns, sets, currency }: PatternListProps) {
  const store = useStore();
  const units = store.units.value;
  if (patterns.length < 2) return null;
  return (
    <StagePart name="Valves compared" told={`${patternNames[sets.pattern]} as planned`}>
      <table class="drip-table">
        <caption class="unseen">Patterns of valves</caption>
        <thead>
          <tr>
            <th scope="col">Valves</th>
            <th scope="col">How many</th>
            <th scope="col">Pipe</th>
            <th scope="col">Price</th>
          </tr>
        </thead>
        <tbody>
          {patterns.map((each) => {
            const { pattern, valves, pipe_m, price, isShort } = each;
            const label = `with ${patternNames[pattern]}`;
            return (
              <tr key={pattern}>
                <th scope="row">
                  {patternNames[pattern]}
                  {pattern === sets.pattern ? (
                    <small>as it is planned</small>
                  ) : (
                    <button
                      type="button"
                      class="quiet-button"
                      aria-label={`Take ${patternNames[pattern]}`}
                      onClick={() =>
                        changeSetting(store, "sets.pattern", pattern, { name: `Valves: ${patternNames[pattern]}` })
                      }
                    >
                      Take this
                    </button>
                  )}
                  {isShort && (
                    <small>
                      <span aria-hidden="true">△ </span>short of water
                    </small>
                  )}
                </th>
                <td>
                  <Figure value={grouped(valves)} label={`valves ${label}`} account={() => valvesAccount(each)} />
                </td>
                <td>
                  <Figure
                    value={wholeLength(pipe_m, units)}
                    label={`pipe ${label}`}
                    account={() => patternPipeAccount(each)}
                  />
                </td>
                <td>
                  <Figure
                    value={price === null ? "not priced" : money(price, currency)}
                    label={`price ${label}`}
                    account={() => patternPriceAccount(each)}
                  />
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </StagePart>
  );
}

import { cupAccount } from "../../core/drip/pipe-accounts.ts";
import type { Plan } from "../../core/plan.ts";
import { firstRunSheet } from "../../core/sheets/first-run.ts";
import { Figure } from "../figure/figure.tsx";
import { printPage } from "../side-view/print-drawing.ts";
import { useStore } from "../store-context.ts";
import { StagePart } from "../strip/stage-part.tsx";
import { firstRunPage } from "./first-run-page.ts";

/** What the first run is checked by: cups under a few emitters, and a gauge at the far end; to be printed and filled in. */
export function FirstRunPart({ plan }: { readonly plan: Plan }) {
  const units = useStore().units.value;
  const sheet = firstRunSheet(plan, units);
  const watering = plan.watering?.watering;
  if (sheet === null || !watering) return null;
  return (
    <StagePart name="Check of the first run" told="cups and gauge, to print">
      <p class="aside">
        What a cup catches in three minutes at the rows where pressure is lowest and highest, and the gauge at their far
        end. Print it, and write beside each number what you found.
      </p>
      <table class="drip-table first-run">
        <caption class="unseen">Check of the first run</caption>
        <thead>
          <tr>
            <th scope="col">Set, row</th>
            <th scope="col">In the cup, first to last vine</th>
            <th scope="col">At the far end</th>
          </tr>
        </thead>
        <tbody>
          {sheet.checks.map(({ set, row, cups, tail }, c) => (
            <tr key={`${set} ${row}`}>
              <th scope="row">
                {set}, row {row}
              </th>
              <td>
                {cups.map(({ volume }, i) => (
                  <span key={i}>
                    {i > 0 && ", "}
                    <Figure
                      value={volume}
                      label={`in three minutes, row ${row}, cup ${i + 1}`}
                      account={() => cupAccount(watering, watering.firstRun[c]?.cups[i]?.emitter ?? -1)}
                    />
                  </span>
                ))}
              </td>
              <td>{tail}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p class="chart-buttons">
        <button type="button" class="quiet-button" onClick={() => printPage(sheet.title, firstRunPage(sheet))}>
          Print the check
        </button>
      </p>
    </StagePart>
  );
}

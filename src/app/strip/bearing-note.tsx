import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { compassAccount } from "../../core/exchange/compass-account.ts";
import type * as Compass from "../../core/exchange/compass-reading.ts";
import { bearingAccount } from "../../core/rows/accounts.ts";
import { formatQuantity } from "../../core/units.ts";
import { Figure } from "../figure/figure.tsx";
import { useStore } from "../store-context.ts";

/** The bearing in force, and what a compass reads along the rows today; the magnetic model is fetched only here. */
export function BearingNote() {
  const store = useStore();
  const read = useSignal<typeof Compass.compassReadings | null>(null);
  useEffect(() => {
    let isWanted = true;
    void import("../../core/exchange/compass-reading.ts").then((module) => {
      if (isWanted) read.value = module.compassReadings;
    });
    return () => {
      isWanted = false;
    };
  }, [read]);
  const plan = store.shownPlan.value;
  const block = plan?.rows?.blocks.find((each) => each.block === store.blockId.value);
  const ground = plan?.ground?.blocks.find((each) => each.block === store.blockId.value);
  const choice = store.block.value?.rows.bearing;
  if (!plan || !block || !ground || !choice) return null;
  const answer = read.value?.(plan, today());
  const reading = answer?.ok ? answer.readings.find((each) => each.block === block.block) : undefined;
  return (
    <p class="field-note">
      True bearing{" "}
      <Figure
        value={formatQuantity("angle", block.bearing_deg, "metric", 1)}
        label="from true north"
        account={() => bearingAccount(block, choice, ground)}
      />
      {reading && (
        <>
          ; a compass reads{" "}
          <Figure
            value={formatQuantity("angle", reading.reading_deg, "metric", 0)}
            label={`on a compass, ${reading.date}`}
            account={() => compassAccount(reading, block.bearing_deg)}
          />{" "}
          on <span class="one-line">{reading.date}</span>: to find your way, not to stake
        </>
      )}
    </p>
  );
}

/** Today by the machine's own clock, YYYY-MM-DD. */
function today(): string {
  const now = new Date();
  const two = (number: number) => String(number).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import type { compassReadings } from "../../core/exchange/compass-reading.ts";
import { formatQuantity } from "../../core/units.ts";
import { useStore } from "../store-context.ts";

/** What a compass reads along the rows of the shown block today; the magnetic model is fetched only here. */
export function CompassReading() {
  const store = useStore();
  const read = useSignal<typeof compassReadings | null>(null);
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
  if (!read.value || !plan) return null;
  const answer = read.value(plan, today());
  if (!answer.ok) return null;
  const reading = answer.readings.find(({ block }) => block === store.blockId.value);
  if (!reading) return null;
  return (
    <p class="field-note">
      A compass reads {formatQuantity("angle", reading.reading_deg, "metric", 0)} on {reading.date}: to find your way,
      not to stake
    </p>
  );
}

/** Today by the machine's own clock, YYYY-MM-DD. */
function today(): string {
  const now = new Date();
  const two = (number: number) => String(number).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

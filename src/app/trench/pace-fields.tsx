import type { TrenchSettings } from "../../core/project/project.ts";
import { changeSetting } from "../commands/change-setting.ts";
import { useStore } from "../store-context.ts";
import { OptionalQuantityField } from "../strip/optional-quantity-field.tsx";
import { QuantityField } from "../strip/quantity-field.tsx";

/** The slowest and the fastest that is dug and that is laid in an hour. */
export function PaceFields({ settings }: { readonly settings: TrenchSettings }) {
  const store = useStore();
  const isUs = useStore().units.value === "us";
  const { dugPerHour_m, laidPerHour_m } = settings;
  const [slow_m, fast_m] = laidPerHour_m;
  const like = isUs ? 30.48 : 30;
  return (
    <>
      <OptionalQuantityField
        label="Dug in an hour, at the slowest"
        kind="length"
        value={dugPerHour_m?.[0] ?? null}
        like={like}
        path="trench.dugPerHour"
        without="as the tool usually does"
        change={(slow, step) =>
          changeSetting(store, "trench.dugPerHour", slow === null ? null : [slow, dugPerHour_m?.[1] ?? slow], step)
        }
      />
      {dugPerHour_m !== null && (
        <QuantityField
          label="Dug in an hour, at the fastest"
          kind="length"
          value={dugPerHour_m[1]}
          path="trench.dugPerHour"
          change={(fast, step) => changeSetting(store, "trench.dugPerHour", [dugPerHour_m[0], fast], step)}
        />
      )}
      <QuantityField
        label="Pipe laid in an hour, at the slowest"
        kind="length"
        value={slow_m}
        path="trench.laidPerHour"
        change={(slow, step) => changeSetting(store, "trench.laidPerHour", [slow, fast_m], step)}
      />
      <QuantityField
        label="Pipe laid in an hour, at the fastest"
        kind="length"
        value={fast_m}
        path="trench.laidPerHour"
        change={(fast, step) => changeSetting(store, "trench.laidPerHour", [slow_m, fast], step)}
      />
    </>
  );
}

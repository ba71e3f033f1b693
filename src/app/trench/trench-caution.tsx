import { formatQuantity } from "../../core/units.ts";
import { useStore } from "../store-context.ts";

const foot_m = 0.3048;

/** Never folded away: an open trench can kill. Depths as in 29 CFR 1926.651 and 652. */
export function TrenchCaution() {
  const units = useStore().units.value;
  const feet = (number: number): string => formatQuantity("length", number * foot_m, units, units === "us" ? 0 : 1);
  return (
    <div class="trench-caution">
      <p>
        <strong>A trench that falls in can kill at any depth.</strong> The depths here are those of US rules (29 CFR
        1926.651 and 652); your local code comes first, and who judges the soil must be competent to.
      </p>
      <ul>
        <li>Before any digging have buried lines marked (in the US: call 811, days ahead); dig by hand near them.</li>
        <li>Nobody goes in at {feet(5)} or deeper unless the sides are sloped back, shored or shielded.</li>
        <li>
          From {feet(4)} on a ladder or ramp within {feet(25)} of everyone in it.
        </li>
        <li>Heaps, gear and machines stay {feet(2)} or more from the edge.</li>
        <li>Look at it every day and after rain; nobody in it while water stands in it, and nobody alone.</li>
        <li>Keep children and stock away; fence or cover what stays open.</li>
      </ul>
    </div>
  );
}

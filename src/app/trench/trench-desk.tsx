import "./trench.css";
import { useStore } from "../store-context.ts";
import { MoreTrenchFields } from "./more-trench-fields.tsx";
import { TrenchFields } from "./trench-fields.tsx";
import { TrenchResults } from "./trench-results.tsx";

/** All of the trench: what it is dug by, what comes of it, and what everybody in it must know. */
export function TrenchDesk() {
  const plan = useStore().shownPlan.value;
  if (!plan) return null;
  const { trench: settings } = plan.project;
  return (
    <>
      <TrenchFields settings={settings} />
      <MoreTrenchFields settings={settings} />
      <TrenchResults plan={plan} />
      <TrenchCaution />
    </>
  );
}

/** Never folded away: an open trench kills. Depths as in 29 CFR 1926.651 and 652; local rules count where they ask more. */
function TrenchCaution() {
  return (
    <div class="trench-caution">
      <p>
        <strong>An open trench can bury a person in seconds.</strong> These rules begin at depths that workplace rules
        in the US name (29 CFR 1926.651 and 652); rules where you are may ask for more, and a person who knows the soil
        decides.
      </p>
      <ul>
        <li>
          Before any digging have buried lines marked (in the US: call 811, days ahead). Dig by hand near the marks.
        </li>
        <li>
          Nobody enters a trench 5 ft (1.5 m) deep or deeper without sloped, shored or shielded sides; a shallower one
          neither when the soil looks ready to cave in.
        </li>
        <li>From 4 ft (1.2 m) on a ladder or ramp within 25 ft (7.6 m) of everyone in it.</li>
        <li>Heaps and machines stay 2 ft (0.6 m) or more from the edge.</li>
        <li>Look at it every day before work and after rain. Nobody in it while water stands in it.</li>
        <li>Fence or cover what stays open overnight. Work in pairs; the machine stops when someone comes near.</li>
      </ul>
    </div>
  );
}

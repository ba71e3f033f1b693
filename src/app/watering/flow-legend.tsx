import "./flow-legend.css";
import { useEffect } from "preact/hooks";
import { flowClasses, flowPieces } from "../../core/drip/flow-pieces.ts";
import { useStore } from "../store-context.ts";
import { type FlowStyle, flowStyles } from "./flow-styles.ts";

/** What the lines on the map mean; as long as it is there the map shows them. */
export function FlowLegend() {
  const store = useStore();
  useEffect(() => {
    store.showsFlow.value = true;
    return () => {
      store.showsFlow.value = false;
    };
  }, [store]);
  const plan = store.shownPlan.value;
  const watered = plan?.watering;
  const rows = plan?.rows?.rows;
  if (!watered?.watering?.emitters || !rows) return null;
  const pieces = flowPieces(watered.job, watered.watering, (row) => rows[row]?.groundLength_m ?? 0);
  const met = flowClasses.filter((flowClass) => pieces.some((piece) => piece.flowClass === flowClass));
  return (
    <figure class="flow-legend">
      <figcaption>On the map: flow of the emitters against their nominal flow</figcaption>
      <ul>
        {met.map((flowClass) => (
          <li key={flowClass}>
            <Sample style={flowStyles[flowClass]} /> {flowStyles[flowClass].says}
          </li>
        ))}
      </ul>
    </figure>
  );
}

/** A piece of the line as the map draws it. */
function Sample({ style: { colour, width_px, dashes, gap_px } }: { readonly style: FlowStyle }) {
  const middle = 8;
  const at = gap_px > 0 ? [-1, 1].map((side) => middle + (side * (gap_px + width_px)) / 2) : [middle];
  return (
    <svg class="flow-sample" viewBox="0 0 48 16" aria-hidden="true">
      {at.map((y) => (
        <line
          key={y}
          x1="0"
          x2="48"
          y1={y}
          y2={y}
          stroke={colour}
          stroke-width={width_px}
          {...(dashes && { "stroke-dasharray": dashes.map((each) => each * width_px).join(" ") })}
        />
      ))}
    </svg>
  );
}

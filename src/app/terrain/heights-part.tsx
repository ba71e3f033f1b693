import "./terrain.css";
import { heightDifferenceAccount, heightRange } from "../../core/ground/height-accounts.ts";
import type { Plan } from "../../core/plan.ts";
import { formatQuantity, type UnitSystem } from "../../core/units.ts";
import { useStore } from "../store-context.ts";
import { ChoiceField } from "../strip/choice-field.tsx";
import { count, grouped } from "../strip/count.ts";
import { type FigureLine, FigureList } from "../strip/figure-list.tsx";
import { QuantityField } from "../strip/quantity-field.tsx";
import { StagePart } from "../strip/stage-part.tsx";
import { HeightFilePart } from "./height-file-part.tsx";
import { takeHeightsOut } from "./take-heights.ts";

const surfaces = [
  { value: "triangles", label: "triangles between neighbours" },
  { value: "plane", label: "one plane through them all" },
] as const;

/** What is known of the heights of the ground, a file to take them from, and how steep rows may be. */
export function HeightsPart() {
  const store = useStore();
  const plan = store.shownPlan.value;
  const units = store.units.value;
  if (!plan?.ground) return null;
  const { ground, spotHeights } = plan.project;
  const heights = heightsOf(plan);
  return (
    <StagePart name="Heights" told={heights ? toldOf(heights, units) : "none: the ground counts as flat"}>
      {heights ? (
        <FigureList lines={figures(heights, units)} />
      ) : (
        <p>
          Rows are as long as on the map. With heights their length, wire and hose follow the ground, and the map shows
          its relief. Draw three spot heights or more, or open a file.
        </p>
      )}
      <HeightFilePart />
      <div class="fields">
        {spotHeights.length > 0 && heights?.kind !== "grid" && (
          <ChoiceField label="Between spot heights" value={ground.heights} path="ground.heights" choices={surfaces} />
        )}
        <QuantityField
          label="Steepest along a row"
          kind="ratio"
          value={ground.steepestAlong_ratio}
          path="ground.steepestAlong"
        />
        <QuantityField
          label="Steepest across"
          kind="ratio"
          value={ground.steepestAcross_ratio}
          path="ground.steepestAcross"
          hint="what the machine that drives the rows may do; steeper rows are noted"
        />
      </div>
      {heights && (
        <button type="button" class="quiet-button" onClick={() => takeHeightsOut(store)}>
          Take the heights out
        </button>
      )}
    </StagePart>
  );
}

interface Heights {
  readonly kind: "spots" | "grid";
  /** "14 spot heights", "a grid of 400 × 300 heights, one every 1 m". */
  readonly told: (units: UnitSystem) => string;
  readonly lowest_m: number;
  readonly highest_m: number;
}

/** The heights that count; null when the ground counts as flat. */
function heightsOf({ ground, project }: Plan): Heights | null {
  const elevation = ground?.elevation;
  if (!elevation || elevation.kind === "flat") return null;
  if (elevation.kind === "grid") {
    const range = heightRange(elevation.height_m);
    const cells = `a grid of ${grouped(elevation.columns)} × ${grouped(elevation.rows)} heights, one every `;
    return range && { kind: "grid", told: (units) => cells + shortLength(elevation.cell_m, units), ...range };
  }
  const { spotHeights } = project;
  const range = heightRange(spotHeights.map(({ height_m }) => height_m));
  const spots = count(spotHeights.length, "spot height");
  const told = elevation.kind === "plane" ? `one plane through ${spots}` : spots;
  return range && { kind: "spots", told: () => told, ...range };
}

function toldOf({ told, lowest_m, highest_m }: Heights, units: UnitSystem): string {
  const [low, high] = [lowest_m, highest_m].map((height_m) => shortLength(height_m, units));
  return `${told(units)}, ${low} to ${high}`;
}

/** Heights by a tenth: what is behind it no survey of ground knows. */
function shortLength(length_m: number, units: UnitSystem): string {
  return formatQuantity("length", length_m, units, 1);
}

function figures({ told, lowest_m, highest_m }: Heights, units: UnitSystem): FigureLine[] {
  return [
    {
      name: "Between lowest and highest",
      how: `${shortLength(lowest_m, units)} and ${shortLength(highest_m, units)}`,
      value: shortLength(highest_m - lowest_m, units),
      account: () => heightDifferenceAccount(lowest_m, highest_m, told(units)),
    },
  ];
}

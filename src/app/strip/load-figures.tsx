import type { BlockLoads, EndLoads, WireLoads } from "../../core/trellis/loads.ts";
import type { BlockTrellis, HungWire } from "../../core/trellis/trellis.ts";
import { formatQuantity, type QuantityKind, type UnitSystem } from "../../core/units.ts";
import { useStore } from "../store-context.ts";
import { type FigureLine, FigureList } from "./figure-list.tsx";

/** What the wires of a block pull and how far they hang, one wire after another; then what one end of a row must hold. */
export function LoadFigures({ structure, loads }: { readonly structure: BlockTrellis; readonly loads: BlockLoads }) {
  const units = useStore().units.value;
  return (
    <>
      {structure.wires.map((hung, w) => {
        const wire = loads.wires[w];
        if (wire === undefined) return null;
        return (
          <section key={`${w} of ${structure.wires.length}`} class="wire-loads" aria-label={`Loads of wire ${w + 1}`}>
            <h3>
              Wire {w + 1}, {hung.wire.purpose} at {formatQuantity("length", hung.height_m, units)}
              {hung.wire.count > 1 && <small> each of {hung.wire.count}</small>}
            </h3>
            <FigureList lines={wireLines(hung, wire, units)} />
          </section>
        );
      })}
      <section class="wire-loads" aria-label="Loads of one end of a row">
        <h3>One end of a row</h3>
        <FigureList lines={endLines(loads.end, units)} />
      </section>
    </>
  );
}

function wireLines({ wire }: HungWire, loads: WireLoads, units: UnitSystem): readonly FigureLine[] {
  const told = (kind: QuantityKind, value: number) => formatQuantity(kind, value, units);
  const line = (name: string, kind: QuantityKind, value: number, how?: string): FigureLine => ({
    name,
    value: told(kind, value),
    account: null,
    ...(how !== undefined && { how }),
  });
  const fruit = wire.purpose === "fruiting" && loads.cropWeight_npm > 0;
  return [
    line("In the cold", "force", loads.coldest_n),
    line("In the heat", "force", loads.hottest_n),
    ...(fruit ? [line("At harvest", "force", loads.cropRigid_n, "when the ends do not give at all")] : []),
    line("Share of breaking", "ratio", loads.share_ratio, `the most, of ${told("force", loads.breaking_n)}`),
    line("Sag", "length", loads.sag_m, `in the longest bay, ${told("length", loads.bay_m)}`),
    line("Sag in the heat", "length", loads.hottestSag_m),
    ...(fruit ? [line("Sag at harvest", "length", loads.cropSag_m, "when the ends give way")] : []),
    line("Take-up", "length", loads.takeUp_m, "as the longest is tightened"),
    {
      name: "Check without a gauge",
      how: `hang ${told("mass", loads.check.mass_kg)} in the middle of the longest bay: it goes down`,
      value: told("length", loads.check.drop_m),
      account: null,
    },
  ];
}

function endLines(end: EndLoads, units: UnitSystem): readonly FigureLine[] {
  const line = (name: string, value_n: number | null, how?: string): readonly FigureLine[] =>
    value_n === null
      ? []
      : [
          {
            name,
            value: formatQuantity("force", value_n, units),
            account: null,
            ...(how !== undefined && { how }),
          },
        ];
  return [
    ...line("Pull of all wires", end.pull_n, "as set"),
    ...line("Pull in the cold", end.coldestPull_n),
    ...line("Tie-back", end.tie_n, "all strands"),
    ...line("Anchor, upward", end.anchorUplift_n),
    ...line("Anchor, sideways", end.anchorDrag_n),
    ...line("Brace, pressed", end.brace_n),
    ...line("Brace wire", end.diagonal_n),
    ...line(end.postThrust_n < 0 ? "Post, pulled out" : "Post, pushed down", Math.abs(end.postThrust_n)),
    ...line("Left to the soil at its foot", end.atGround_n),
  ];
}

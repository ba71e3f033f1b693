import type { Block } from "../../core/project/project.ts";
import { endLoadAccounts, type ToldEnd } from "../../core/trellis/end-load-accounts.ts";
import { type ToldWire, type WireLoadName, wireLoadAccounts } from "../../core/trellis/load-accounts.ts";
import type { BlockLoads, EndLoads } from "../../core/trellis/loads.ts";
import type { BlockTrellis } from "../../core/trellis/trellis.ts";
import { formatQuantity, type QuantityKind, type UnitSystem } from "../../core/units.ts";
import { useStore } from "../store-context.ts";
import { type FigureLine, FigureList } from "./figure-list.tsx";

interface LoadFiguresProps {
  readonly block: Block;
  readonly structure: BlockTrellis;
  readonly loads: BlockLoads;
}

/** What the wires of a block pull and how far they hang, one wire after another; then what one end of a row must hold. */
export function LoadFigures({ block, structure, loads }: LoadFiguresProps) {
  const units = useStore().units.value;
  return (
    <>
      {structure.wires.map((hung, w) => {
        const wire = loads.wires[w];
        if (wire === undefined) return null;
        return (
          <section key={`${w} of ${structure.wires.length}`} aria-label={`Loads of wire ${w + 1}`}>
            <h3>
              Wire {w + 1}, {hung.wire.purpose} at {formatQuantity("length", hung.height_m, units)}
              {hung.wire.count > 1 && <small> each of {hung.wire.count}</small>}
            </h3>
            <FigureList lines={wireLines({ hung, loads: wire, block }, units)} />
          </section>
        );
      })}
      <section aria-label="Loads of one end of a row">
        <h3>One end of a row</h3>
        <FigureList lines={endLines({ structure, loads }, units)} />
      </section>
    </>
  );
}

function wireLines(told: ToldWire, units: UnitSystem): readonly FigureLine[] {
  const { hung, loads } = told;
  const written = (kind: QuantityKind, value: number) => formatQuantity(kind, value, units);
  const line = (name: string, kind: QuantityKind, of: WireLoadName, how?: string): FigureLine => ({
    name,
    value: written(kind, of === "drop_m" ? loads.check.drop_m : loads[of]),
    account: () => wireLoadAccounts[of](told),
    ...(how !== undefined && { how }),
  });
  const hasFruit = hung.wire.purpose === "fruiting" && loads.cropWeight_npm > 0;
  return [
    line("In the cold", "force", "coldest_n"),
    line("In the heat", "force", "hottest_n"),
    ...(hasFruit ? [line("At harvest", "force", "cropRigid_n", "when the ends do not give at all")] : []),
    line("Share of breaking", "ratio", "share_ratio", `the most, of ${written("force", loads.breaking_n)}`),
    line("Sag", "length", "sag_m", `in the longest bay, ${written("length", loads.bay_m)}`),
    line("Sag in the heat", "length", "hottestSag_m"),
    ...(hasFruit ? [line("Sag at harvest", "length", "cropSag_m", "when the ends give way")] : []),
    line("Take-up", "length", "takeUp_m", "as the longest is tightened"),
    line(
      "Check without a gauge",
      "length",
      "drop_m",
      `hang ${written("mass", loads.check.mass_kg)} in the middle of the longest bay: it goes down`,
    ),
  ];
}

function endLines(told: ToldEnd, units: UnitSystem): readonly FigureLine[] {
  const { end } = told.loads;
  const line = (name: string, of: keyof EndLoads, how?: string): readonly FigureLine[] => {
    const value_n = end[of];
    if (value_n === null) return [];
    const value = formatQuantity("force", value_n, units);
    return [{ name, value, account: () => endLoadAccounts[of](told), ...(how !== undefined && { how }) }];
  };
  const thrust = end.postThrust_n < 0 ? "pulled out where below 0" : "pushed into the ground";
  return [
    ...line("Pull of all wires", "pull_n", "as set"),
    ...line("Pull in the cold", "coldestPull_n"),
    ...line("Tie-back", "tie_n", "all strands"),
    ...line("Anchor, upward", "anchorUplift_n"),
    ...line("Anchor, sideways", "anchorDrag_n"),
    ...line("Brace, pressed", "brace_n"),
    ...line("Brace wire", "diagonal_n"),
    ...line("Along the post", "postThrust_n", thrust),
    ...line("Left to the soil at its foot", "atGround_n"),
    ...(end.freeDepth_m === null
      ? []
      : [
          {
            name: "Depth that would hold alone",
            how: "in sandy soil, and it gives half an inch",
            value: formatQuantity("length", end.freeDepth_m, units),
            account: () => endLoadAccounts.freeDepth_m(told),
          },
        ]),
  ];
}

import type { Block } from "../../core/project/project.ts";
import type { BlockLoads } from "../../core/trellis/loads.ts";
import type { BlockTrellis } from "../../core/trellis/trellis.ts";
import { formatQuantity, type UnitSystem } from "../../core/units.ts";
import { useStore } from "../store-context.ts";
import { EndAssemblyFields, endNames } from "./end-assembly-fields.tsx";
import { EndFigures } from "./end-figures.tsx";
import { LoadFields } from "./load-fields.tsx";
import { LoadFigures } from "./load-figures.tsx";
import { PostFields } from "./post-fields.tsx";
import { PostFigures } from "./post-figures.tsx";
import { StagePart } from "./stage-part.tsx";

interface TrellisPartsProps {
  readonly block: Block;
  readonly structure: BlockTrellis | undefined;
  readonly loads: BlockLoads | undefined;
}

/** Ends of rows, posts and stakes, loads: each a line of its own that opens; the caution stays in view. */
export function TrellisParts({ block, structure, loads }: TrellisPartsProps) {
  const units = useStore().units.value;
  return (
    <>
      <StagePart name="Ends of rows" told={endNames[block.trellis.endAssembly.kind]}>
        <EndAssemblyFields block={block} structure={structure} />
        {structure && <EndFigures structure={structure} />}
      </StagePart>
      <StagePart name="Posts and stakes" told={structure ? postsTold(structure, units) : ""}>
        <PostFields block={block} structure={structure} />
        {structure && <PostFigures trellis={block.trellis} structure={structure} />}
      </StagePart>
      <StagePart name="Loads" told={loads ? loadsTold(loads, units) : "with the first row"}>
        <LoadFields block={block} />
        {structure && loads && <LoadFigures block={block} structure={structure} loads={loads} />}
      </StagePart>
      <p class="load-caution">
        <strong>Wire under tension can whip, and an anchor that lets go flies.</strong> These are estimates from the
        wires alone, not a structural design. Size anchors and posts by your soil, local practice and code; pull-test
        one anchor; wear eye protection and gloves, and stand clear of the line.
      </p>
    </>
  );
}

function postsTold({ endPost, linePost, stake }: BlockTrellis, units: UnitSystem): string {
  const length = (value_m: number) => formatQuantity("length", value_m, units);
  return `${length(endPost.length_m)} and ${length(linePost.length_m)}${stake ? `, stakes ${length(stake.length_m)}` : ""}`;
}

function loadsTold({ wires, end }: BlockLoads, units: UnitSystem): string {
  const most = wires.reduce((share, { share_ratio }) => Math.max(share, share_ratio), 0);
  return `${formatQuantity("force", end.coldestPull_n, units)} on an end in the cold, wires to ${formatQuantity("ratio", most, units, 0)} of breaking`;
}

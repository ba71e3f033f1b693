import { type Block, type EndAssemblyKind, endAssemblyKinds } from "../../core/project/project.ts";
import type { BlockTrellis } from "../../core/trellis/trellis.ts";
import { formatQuantity } from "../../core/units.ts";
import { useStore } from "../store-context.ts";
import { ChoiceField } from "./choice-field.tsx";
import { CountField } from "./count-field.tsx";
import { OptionalQuantityField } from "./optional-quantity-field.tsx";
import { QuantityField } from "./quantity-field.tsx";

export const endNames: Readonly<Record<EndAssemblyKind, string>> = {
  vertical: "upright post, tied back",
  leaning: "leaning post, tied back",
  "h-brace": "H-brace",
  "slant-brace": "slant brace",
  "inside-brace": "inside brace",
  "buried-anchor": "upright post, buried anchor",
  single: "single post, nothing holds it",
};
const kinds = endAssemblyKinds.map((value) => ({ value, label: endNames[value] }));
const directions = [
  { value: "out", label: "away from the row" },
  { value: "in", label: "over the row" },
] as const;
const tied: readonly EndAssemblyKind[] = ["vertical", "leaning", "buried-anchor"];
const braced: readonly EndAssemblyKind[] = ["h-brace", "slant-brace", "inside-brace"];

/** How the ends of the block's rows are held: only what its kind has is asked. */
export function EndAssemblyFields({
  block: { rows, trellis },
  structure,
}: {
  readonly block: Block;
  readonly structure: BlockTrellis | undefined;
}) {
  const units = useStore().units.value;
  const { endAssembly: end } = trellis;
  const length = (value_m: number) => formatQuantity("length", value_m, units);
  const tie_m = structure?.end.tie?.height_m ?? 1;
  const brace_m = structure?.end.brace?.height_m ?? tie_m;
  const inside_m = structure?.end.brace?.inside_m ?? 2 * brace_m;
  return (
    <div class="fields">
      <ChoiceField label="Rows end in" value={end.kind} path="trellis.endAssembly.kind" choices={kinds} />
      {end.kind === "leaning" && (
        <>
          <QuantityField
            label="End post from the ground"
            kind="angle"
            value={end.postAngle_deg}
            path="trellis.endAssembly.postAngle"
          />
          <ChoiceField
            label="End post leans"
            value={end.leanDirection}
            path="trellis.endAssembly.leanDirection"
            choices={directions}
          />
        </>
      )}
      {tied.includes(end.kind) && (
        <>
          <QuantityField
            label="Anchor from the end post"
            kind="length"
            value={rows.anchorOut_m}
            path="rows.anchorOut"
          />
          <OptionalQuantityField
            label="Tie-back meets the post at"
            kind="length"
            value={end.tieHeight_m}
            like={tie_m}
            path="trellis.endAssembly.tieHeight"
            without={`${length(tie_m)}, the highest fixed wire`}
          />
          <CountField label="Strands of the tie-back" value={end.tieStrands} path="trellis.endAssembly.tieStrands" />
        </>
      )}
      {braced.includes(end.kind) && (
        <>
          <OptionalQuantityField
            label="Brace meets the post at"
            kind="length"
            value={end.braceHeight_m}
            like={brace_m}
            path="trellis.endAssembly.braceHeight"
            without={`${length(brace_m)}, the highest fixed wire`}
          />
          <OptionalQuantityField
            label="Brace reaches into the row"
            kind="length"
            value={end.braceLength_m}
            like={inside_m}
            path="trellis.endAssembly.braceLength"
            without={`${length(inside_m)}, twice its height`}
          />
        </>
      )}
      {end.kind !== "single" && end.kind !== "slant-brace" && (
        <QuantityField
          label={tied.includes(end.kind) ? "Tie-back wire" : "Brace wire"}
          kind="diameter"
          value={end.tieWire_mm}
          path="trellis.endAssembly.tieWire"
        />
      )}
      <OptionalQuantityField
        label="Hole filled with concrete"
        kind="length"
        value={end.concreteHole_m}
        like={units === "us" ? 0.3048 : 1}
        path="trellis.endAssembly.concreteHole"
        without="no concrete"
      />
      {end.concreteHole_m !== null && (
        <QuantityField
          label="One bag of mix gives"
          kind="volume"
          value={end.concreteBag_l}
          path="trellis.endAssembly.concreteBag"
        />
      )}
    </div>
  );
}

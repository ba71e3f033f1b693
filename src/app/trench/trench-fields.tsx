import type { SoilClass, TrenchSettings, TrenchTool } from "../../core/project/project.ts";
import { useStore } from "../store-context.ts";
import { ChoiceField } from "../strip/choice-field.tsx";
import { OptionalQuantityField } from "../strip/optional-quantity-field.tsx";
import { QuantityField } from "../strip/quantity-field.tsx";
import { PipeChoice } from "./pipe-fields.tsx";

const toolChoices: readonly { readonly value: TrenchTool; readonly label: string }[] = [
  { value: "hand", label: "spade and pick" },
  { value: "trencher", label: "trencher" },
  { value: "excavator", label: "excavator" },
];

const soilChoices: readonly { readonly value: SoilClass; readonly label: string }[] = [
  { value: "sand", label: "sand and gravel" },
  { value: "loam", label: "loam" },
  { value: "clay", label: "clay" },
  { value: "rock", label: "broken rock" },
];

const dugChoices = [
  { value: "before-posts", label: "before posts and anchors" },
  { value: "after-posts", label: "after posts and anchors" },
] as const;

/** The pipe, how deep it lies, what it is dug with and when. */
export function TrenchFields({ settings }: { readonly settings: TrenchSettings }) {
  const isUs = useStore().units.value === "us";
  const { pipe, cover_m, frostDepth_m, tool, dug, soil } = settings;
  return (
    <div class="fields">
      <PipeChoice pipe={pipe} />
      <QuantityField label="Ground over the pipe" kind="length" value={cover_m} path="trench.cover" />
      <OptionalQuantityField
        label="Frost goes down to"
        kind="length"
        value={frostDepth_m}
        like={isUs ? 0.3048 : 0.5}
        path="trench.frostDepth"
        without="not known: ask where building permits are given"
      />
      <ChoiceField label="Dug with" value={tool} path="trench.tool" choices={toolChoices} />
      <ChoiceField label="Dug" value={dug} path="trench.dug" choices={dugChoices} />
      <ChoiceField label="Soil" value={soil} path="trench.soil" choices={soilChoices} />
    </div>
  );
}

import type { Lane, Project } from "../../core/project/project.ts";
import { changeSetting } from "../commands/change-setting.ts";
import { useStore } from "../store-context.ts";
import { ChoiceField } from "../strip/choice-field.tsx";
import { More } from "../strip/more.tsx";
import { QuantityField } from "../strip/quantity-field.tsx";
import { PriceFields } from "./price-fields.tsx";

const laneChoices: readonly { readonly value: Lane; readonly label: string }[] = [
  { value: "inside", label: "between first vine and end post" },
  { value: "between", label: "between end post and anchor" },
  { value: "beyond", label: "beyond the anchor" },
];

/** Where the line begins, in which lane it passes the rows, what it keeps from things, what it costs. */
export function MainlineFields({ project }: { readonly project: Project }) {
  const store = useStore();
  const { mainLine, sources } = project;
  const sourceChoices = [
    { value: "", label: "whichever costs least" },
    ...sources.map(({ key, name }) => ({ value: key, label: name ?? key })),
  ];
  return (
    <>
      <div class="fields">
        {sources.length > 1 && (
          <ChoiceField
            label="Water comes from"
            value={mainLine.source ?? ""}
            path="mainLine.source"
            choices={sourceChoices}
            change={(chosen, step) => changeSetting(store, "mainLine.source", chosen === "" ? null : chosen, step)}
          />
        )}
        <ChoiceField label="Lane past the rows" value={mainLine.lane} path="mainLine.lane" choices={laneChoices} />
        <QuantityField
          label="Distance to posts and anchors"
          kind="length"
          value={mainLine.postDistance_m}
          path="mainLine.postDistance"
        />
        <PriceFields settings={mainLine} />
      </div>
      <More>
        <QuantityField
          label="Distance to obstacles"
          kind="length"
          value={mainLine.obstacleDistance_m}
          path="mainLine.obstacleDistance"
        />
        <QuantityField
          label="Distance to no-plant lines and areas"
          kind="length"
          value={mainLine.noPlantDistance_m}
          path="mainLine.noPlantDistance"
        />
        <QuantityField
          label="Distance to boundaries"
          kind="length"
          value={mainLine.boundaryDistance_m}
          path="mainLine.boundaryDistance"
        />
        <QuantityField
          label="A crossing that is not priced counts as trench of"
          kind="length"
          value={mainLine.crossingAs_m}
          path="mainLine.crossingAs"
        />
        <p class="aside">
          What may be crossed, and what keeps a distance of its own, is said of each thing: choose it on the map.
        </p>
      </More>
    </>
  );
}

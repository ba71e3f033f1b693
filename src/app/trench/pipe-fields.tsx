import { pipeSizes } from "../../core/hydraulics/pipe-sizes.ts";
import type { PipeJoint, PipeSettings } from "../../core/project/project.ts";
import { changeSetting } from "../commands/change-setting.ts";
import { useStore } from "../store-context.ts";
import { ChoiceField } from "../strip/choice-field.tsx";
import { QuantityField } from "../strip/quantity-field.tsx";

export const jointChoices: readonly { readonly value: PipeJoint; readonly label: string }[] = [
  { value: "solvent", label: "solvent cement" },
  { value: "gasket", label: "gasketed bells" },
  { value: "barbed", label: "barbed fittings and clamps" },
];

const own = "own";

/** Which pipe lies in the trench, from the tables or with diameters of its own. */
export function PipeChoice({ pipe }: { readonly pipe: PipeSettings }) {
  const store = useStore();
  const isKnown = pipeSizes.some(({ size }) => size === pipe.size);
  return (
    <ChoiceField
      label="Pipe of the main line"
      value={isKnown ? pipe.size : own}
      path="trench.pipe"
      choices={[
        ...pipeSizes.map(({ size, name }) => ({ value: size, label: name })),
        { value: own, label: isKnown ? "another, with its own diameters" : `another: ${pipe.size}` },
      ]}
      change={(chosen, step) =>
        changeSetting(store, "trench.pipe", chosen === own ? ownPipe(pipe) : { size: chosen }, step)
      }
    />
  );
}

/** The pipe in force, stated in full, to be changed from there. */
function ownPipe({ outside_mm, inside_mm, stick_m, joint }: PipeSettings) {
  return { size: own, outside: outside_mm, inside: inside_mm, stick: stick_m, joint };
}

/** What makers differ in. */
export function OwnPipeFields({ pipe }: { readonly pipe: PipeSettings }) {
  return (
    <>
      <QuantityField
        label="Pipe, outside diameter"
        kind="diameter"
        value={pipe.outside_mm}
        path="trench.pipe.outside"
      />
      <QuantityField label="Pipe, inside diameter" kind="diameter" value={pipe.inside_mm} path="trench.pipe.inside" />
      <QuantityField label="Length it is sold in" kind="length" value={pipe.stick_m} path="trench.pipe.stick" />
      <ChoiceField label="Joined by" value={pipe.joint} path="trench.pipe.joint" choices={jointChoices} />
    </>
  );
}

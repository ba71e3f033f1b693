import { useState } from "preact/hooks";
import type { HandOverChoice } from "../../core/exchange/choice.ts";
import type { Format } from "../../core/exchange/format.ts";
import type { Plan } from "../../core/plan.ts";
import { statedSystem } from "../../core/systems/coordinate-system.ts";
import { useStore } from "../store-context.ts";
import { firstError } from "./beside-fields.ts";
import { chooseForAll, handOverChoicesOf } from "./hand-over-choices.ts";
import { PickChoice } from "./pick-choice.tsx";
import { type SystemHere, systemsHere } from "./systems-here.ts";
import { TextChoice } from "./text-choice.tsx";

interface SystemChoiceProps {
  readonly plan: Plan;
  readonly format: Format;
  readonly choice: HandOverChoice;
}

const degrees = "degrees";
const other = "other";

/** In which coordinate system places are written: degrees, those of the region, the plane of the project, or any other by its code. */
export function SystemChoice({ plan, format, choice }: SystemChoiceProps) {
  const store = useStore();
  const choices = handOverChoicesOf(store);
  const here = systemsHere(plan);
  const known =
    choice.system === null || choice.system === "local" || here.some(({ value }) => value === choice.system);
  const [isOther, setOther] = useState(!known);
  const picks = [
    ...(format.places === "chosen, no degrees" ? [] : [{ value: degrees, label: "longitude, latitude" }]),
    ...here.map(({ value, label }) => ({ value, label })),
    { value: "local", label: "plane of the project" },
    { value: other, label: "another, by its code" },
  ];
  const stated = choice.system === null || choice.system === "local" ? null : statedSystem(choice.system);
  const told = isOther && stated?.ok ? stated.value.name : undefined;
  return (
    <>
      <PickChoice
        label="Places in"
        value={isOther ? other : (choice.system ?? degrees)}
        choices={picks}
        hint={isOther ? undefined : hints(choice.system, here)}
        take={(value) => {
          setOther(value === other);
          if (value !== other) chooseForAll(choices, { system: value === degrees ? null : value });
        }}
      />
      {isOther && (
        <TextChoice
          label="EPSG code"
          value={known ? "" : (choice.system ?? "")}
          usual="26910"
          hint={told}
          refusal={stated === null || stated.ok ? null : firstError(stated.findings, store.units.value)}
          take={(typed) => {
            chooseForAll(choices, { system: typed.trim() === "" ? null : typed });
            return null;
          }}
        />
      )}
    </>
  );
}

function hints(system: string | null, here: readonly SystemHere[]): string {
  if (system === null) return "WGS 84, 8 decimals of a degree: a millimetre";
  if (system === "local") return "east and north from an origin in the parcel, true to scale";
  return here.find(({ value }) => value === system)?.system.name ?? system;
}

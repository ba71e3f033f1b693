import { tapeDifferenceAccount } from "../../core/drawing/accounts.ts";
import type { EdgeRef } from "../../core/drawing/drawn.ts";
import { edgeSetback } from "../../core/drawing/edges.ts";
import type { Project } from "../../core/project/project.ts";
import { formatQuantity, type UnitSystem } from "../../core/units.ts";
import { Figure } from "../figure/figure.tsx";
import { useStore } from "../store-context.ts";
import { CellField } from "./cell-field.tsx";
import { setSideSetback, setTapedSide } from "./thing-edits.ts";
import { statedLength, statedLength_m, typedLength } from "./typed-length.ts";

interface SideFieldsProps {
  readonly project: Project;
  readonly side: EdgeRef;
  /** Length as drawn. */
  readonly length_m: number;
  readonly isLabelled: boolean;
}

/** Setback and taped length of one side; the drawn length and the difference stand beside what was taped. */
export function SideFields({ project, side, length_m, isLabelled }: SideFieldsProps) {
  const store = useStore();
  const units = store.units.value;
  const { own, inForce_m, taped } = edgeSetback(project, side);
  const taped_m = statedLength_m(taped);
  const number = side.edge + 1;
  const setback = (typed: string): string => {
    const meant = typedLength(store, typed, inForce_m);
    return meant.ok ? setSideSetback(store, side, meant.value) : meant.sentence;
  };
  const tape = (typed: string): string => {
    const meant = typedLength(store, typed, length_m);
    return meant.ok ? setTapedSide(store, side, meant.value) : meant.sentence;
  };
  return (
    <>
      <CellField
        label={isLabelled ? "Setback of this side" : `Setback of side ${number}`}
        shown={statedLength(store, own)}
        placeholder={`${formatQuantity("length", inForce_m, units)} as usual`}
        apply={setback}
        isLabelled={isLabelled}
      />
      <CellField
        label={isLabelled ? "Length by tape" : `Side ${number} by tape`}
        shown={statedLength(store, taped)}
        placeholder="not taped"
        apply={tape}
        isLabelled={isLabelled}
      />
      {taped_m !== null && (
        <span class="side-difference">
          drawn {formatQuantity("length", length_m, units)},{" "}
          <Figure
            value={differenceText(length_m - taped_m, units)}
            label={`side ${number}, drawn and taped`}
            account={() => tapeDifferenceAccount(length_m, taped_m)}
          />
        </span>
      )}
    </>
  );
}

function differenceText(difference_m: number, units: UnitSystem): string {
  const size = formatQuantity("length", Math.abs(difference_m), units);
  if (Math.abs(difference_m) < 0.005) return "the same";
  return difference_m > 0 ? `${size} more than the tape` : `${size} less than the tape`;
}

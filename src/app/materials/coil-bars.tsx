import { useState } from "preact/hooks";
import type { CutJob } from "../../core/materials/cutting/cut-job.ts";
import type { Cut, CutAnswer, CutCoil } from "../../core/materials/cutting/cut-plan.ts";
import type { Row } from "../../core/rows/rows.ts";
import { formatQuantity, type UnitSystem } from "../../core/units.ts";
import { useStore } from "../store-context.ts";
import { count } from "../strip/count.ts";
import { type CutWire, shortRow, wireName } from "./run-name.ts";

interface CoilBarsProps {
  readonly job: CutJob;
  readonly answer: CutAnswer;
  readonly rows: readonly Row[];
  readonly wires: readonly CutWire[];
}

/** So many coils are drawn before one asks for the rest. */
const first = 12;

/** Every coil as a bar with its cuts in the order of work; a coil opens to the same as a list. */
export function CoilBars({ job, answer, rows, wires }: CoilBarsProps) {
  const units = useStore().units.value;
  const [isWhole, setWhole] = useState(false);
  const longest_m = answer.coils.reduce((most, { length_m }) => Math.max(most, length_m), 0);
  const shown = isWhole ? answer.coils : answer.coils.slice(0, first);
  const told = { job, rows, wires, units, longest_m };
  const signs = [...new Map(wires.map((wire) => [wireName(wire, units), wire])).entries()];
  return (
    <>
      {signs.length > 1 && (
        <ul class="wire-signs">
          {signs.map(([name, { look }]) => (
            <li key={name}>
              <span class={`cut cut-${look}`} aria-hidden="true" /> {name}
            </li>
          ))}
        </ul>
      )}
      <ol class="coil-bars">
        {shown.map((coil, at) => (
          // A coil is its place in the order of work.
          <li key={`${at} of ${answer.coils.length}`}>
            <Coil coil={coil} number={at + 1} {...told} />
          </li>
        ))}
      </ol>
      {answer.coils.length > shown.length && (
        <button type="button" class="quiet-button" onClick={() => setWhole(true)}>
          Show all {count(answer.coils.length, "coil")}
        </button>
      )}
    </>
  );
}

interface CoilProps {
  readonly coil: CutCoil;
  readonly number: number;
  readonly job: CutJob;
  readonly rows: readonly Row[];
  readonly wires: readonly CutWire[];
  readonly units: UnitSystem;
  readonly longest_m: number;
}

function Coil({ coil, number, job, rows, wires, units, longest_m }: CoilProps) {
  const [isOpen, setOpen] = useState(false);
  const length = (value_m: number) => formatQuantity("length", value_m, units);
  const share = (value_m: number) => `${(100 * value_m) / longest_m}%`;
  return (
    <details onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        <span class="coil-told">
          <strong>{coil.isOnHand ? `Coil ${number}, yours` : `Coil ${number}`}</strong> {length(coil.length_m)},{" "}
          {count(coil.cuts.length, "cut")}, {length(coil.left_m)} left
        </span>
        <span
          class={coil.isOnHand ? "coil-bar coil-yours" : "coil-bar"}
          style={{ width: share(coil.length_m) }}
          aria-hidden="true"
        >
          {coil.cuts.map((cut, i) => {
            const run = job.runs[cut.run];
            const row = rows[run?.row ?? -1];
            const wire = wires.find((each) => each.wire === run?.wire && each.block === row?.block);
            return (
              <span
                // A cut is its place in the order of work.
                key={`${i} of ${coil.cuts.length}`}
                class={`cut cut-${wire?.look ?? 0}${isPart(cut, run?.length_m) ? " cut-joined" : ""}`}
                style={{ width: `${(100 * cut.taken_m) / coil.length_m}%` }}
              >
                <span>{row && shortRow(row)}</span>
              </span>
            );
          })}
        </span>
      </summary>
      {isOpen && (
        <ol class="cut-list">
          {coil.cuts.map((cut, i) => {
            const run = job.runs[cut.run];
            const row = rows[run?.row ?? -1];
            const wire = wires.find((each) => each.wire === run?.wire && each.block === row?.block);
            const part = isPart(cut, run?.length_m)
              ? `, from ${length(cut.from_m)} to ${length(cut.to_m)}, joined mid-bay`
              : "";
            return (
              // A cut is its place in the order of work.
              <li key={`${i} of ${coil.cuts.length}`}>
                Row {row?.id}, {wireName(wire, units)}
                {(run?.copy ?? 0) > 0 && ", second of the pair"}
                {part}
                <span>
                  <strong>{length(cut.taken_m)}</strong> off, {length(cut.left_m)} left
                </span>
              </li>
            );
          })}
        </ol>
      )}
    </details>
  );
}

/** True for a piece that is not the whole run. */
function isPart({ from_m, to_m }: Cut, whole_m: number | undefined): boolean {
  return whole_m !== undefined && to_m - from_m < whole_m - 1e-6;
}

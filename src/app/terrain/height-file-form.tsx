import { useId, useState } from "preact/hooks";
import { formatQuantity, type UnitSystem } from "../../core/units.ts";
import { type VerticalUnit, verticalUnits } from "../../readers/vertical-unit.ts";
import { useStore } from "../store-context.ts";
import { grouped } from "../strip/count.ts";
import type { AboutHeights, Cover } from "./height-messages.ts";

const unitNames: Readonly<Record<VerticalUnit, string>> = {
  m: "metres",
  ft: "feet (international)",
  "us-ft": "US survey feet",
};

const covers: Readonly<Record<Cover, string>> = {
  all: "covers the whole parcel",
  part: "covers a part of the parcel only: outside it nothing is known of the ground",
  none: "does not reach the parcel",
};

interface HeightFileFormProps {
  readonly file: File;
  readonly about: AboutHeights;
  /** Looks again, with the coordinate system as typed. */
  readonly onSystem: (system: string) => void;
  readonly onRead: (unit: VerticalUnit) => void;
  readonly onCancel: () => void;
  /** As typed the last time. */
  readonly typed: string;
}

/** What a height file is, and what it does not say itself: the unit of its heights, and its coordinate system when that is unknown. */
export function HeightFileForm({ file, about, typed, onSystem, onRead, onCancel }: HeightFileFormProps) {
  const units = useStore().units.value;
  // Never a guess: what the file does not say is chosen by hand.
  const [unit, setUnit] = useState<VerticalUnit | null>(about.file.verticalUnit);
  const id = useId();
  return (
    <form
      class="height-form"
      aria-label="Height file"
      onSubmit={(event) => {
        event.preventDefault();
        if (unit) onRead(unit);
      }}
    >
      <p>
        <strong>{file.name}</strong>: {told(about, units)}
      </p>
      {about.sentences.map((sentence) => (
        <p key={sentence} class="aside">
          {sentence}
        </p>
      ))}
      {about.cover === null ? (
        <SystemField typed={typed} onSystem={onSystem} />
      ) : (
        <div class="field field-choice">
          <label for={id}>Heights are in</label>
          <select
            id={id}
            value={unit ?? ""}
            onChange={(event) => {
              const { value } = event.currentTarget;
              setUnit(verticalUnits.find((each) => each === value) ?? null);
            }}
          >
            <option value="" disabled>
              choose …
            </option>
            {verticalUnits.map((each) => (
              <option key={each} value={each}>
                {unitNames[each]}
              </option>
            ))}
          </select>
          <span class="field-hint">
            {about.file.verticalUnit ? "as the file says" : "the file does not say; who made it can tell you"}
          </span>
        </div>
      )}
      <div class="panel-buttons">
        <button type="submit" class="strong-button" disabled={unit === null || !isReaching(about)}>
          Use these heights
        </button>
        <button type="button" onClick={onCancel}>
          Not this file
        </button>
      </div>
    </form>
  );
}

function isReaching({ cover }: AboutHeights): boolean {
  return cover === "all" || cover === "part";
}

function told({ file, cover }: AboutHeights, units: UnitSystem): string {
  const { columns, rows, cell_m, system } = file;
  const cells = `${grouped(columns)} × ${grouped(rows)} cells`;
  const sides = new Set((cell_m ?? []).map((side_m) => formatQuantity("length", side_m, units, 1)));
  const size = cell_m === null ? "" : ` of about ${[...sides].join(" × ")}`;
  const where = system === null ? "a coordinate system that is not known here" : system;
  return `${cells}${size}, ${where}${cover === null ? "" : `, ${covers[cover]}`}.`;
}

function SystemField({ typed, onSystem }: { readonly typed: string; readonly onSystem: (system: string) => void }) {
  const [system, setSystem] = useState(typed);
  const id = useId();
  return (
    <>
      <label for={id}>Coordinate system, as EPSG code or PROJ text</label>
      <input
        id={id}
        type="text"
        autocomplete="off"
        spellcheck={false}
        placeholder="EPSG:32610"
        value={system}
        onInput={(event) => setSystem(event.currentTarget.value)}
      />
      <button type="button" disabled={system.trim() === ""} onClick={() => onSystem(system.trim())}>
        Look again with it
      </button>
    </>
  );
}

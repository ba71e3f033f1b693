import { useId, useState } from "preact/hooks";
import { formatQuantity, parseQuantity, text } from "../../core/units.ts";
import { changeCoils, changePieces, coilsAsWritten } from "../commands/change-stock.ts";
import { useStore } from "../store-context.ts";
import { CountField } from "../strip/count-field.tsx";
import { QuantityField } from "../strip/quantity-field.tsx";
import { withShownUnit } from "../typed-quantity.ts";
import { typedCoils } from "./typed-coils.ts";

interface StockProps {
  readonly article: string;
  readonly name: string;
}

/** How many pieces of an article are there already. */
export function PieceStock({ article, name }: StockProps) {
  const store = useStore();
  const stock = store.shownPlan.value?.project.materials.onHand.find((entry) => entry.article === article);
  return (
    <div class="fields">
      <CountField
        label="You have"
        value={stock?.pieces ?? 0}
        path=""
        change={(pieces, { joins }) =>
          changePieces(store, article, pieces, {
            name: `${pieces} there of ${name}`,
            ...(joins !== undefined && { joins }),
          })
        }
      />
    </div>
  );
}

/** The coils and part coils of an article that are there already, each with its own length. */
export function CoilStock({ article, name }: StockProps) {
  const store = useStore();
  const units = store.units.value;
  const stock = store.shownPlan.value?.project.materials.onHand.find((entry) => entry.article === article);
  const coils_m = stock?.coils_m ?? [];
  const takeOut = (at: number): void => {
    const left = coilsAsWritten(store, article).filter((_, i) => i !== at);
    changeCoils(store, article, left, { name: `Take out a coil of ${name}` });
  };
  return (
    <>
      <h4>Coils and part coils you have</h4>
      {coils_m.length > 0 && (
        <ul class="coil-stock">
          {coils_m.map((length_m, at) => (
            // A coil has no name of its own; its place in the list is what the file knows it by.
            <li key={`${at} of ${coils_m.length}`}>
              <QuantityField
                label={`Coil ${at + 1} holds`}
                kind="length"
                value={length_m}
                path=""
                change={(meant, step) =>
                  changeCoils(
                    store,
                    article,
                    coilsAsWritten(store, article).map((coil, i) => (i === at ? meant : coil)),
                    step,
                  )
                }
              />
              <button
                type="button"
                class="quiet-button"
                aria-label={`Take out coil ${at + 1}, ${formatQuantity("length", length_m, units)}`}
                title="Take out"
                onClick={() => takeOut(at)}
              >
                ×
              </button>
            </li>
          ))}
        </ul>
      )}
      <AddCoils article={article} name={name} />
    </>
  );
}

function AddCoils({ article, name }: StockProps) {
  const store = useStore();
  const units = store.units.value;
  const [typed, setTyped] = useState("");
  const [refusal, setRefusal] = useState<string | null>(null);
  const id = useId();
  const usual_m = store.shownPlan.value?.project.materials.wireCoils_m[0] ?? 1;
  const attempt = (): string | null => {
    const { number, length } = typedCoils(typed);
    const meant = withShownUnit(length, "length", usual_m, units);
    const parsed = parseQuantity("length", meant);
    if (!parsed.ok) return `“${typed}” was not understood: ${parsed.reason}.`;
    if (parsed.value <= 0 || number < 1 || number > most) {
      return `From 1 to ${most} coils at once, each with something on it.`;
    }
    const coils = [...coilsAsWritten(store, article), ...Array.from({ length: number }, () => meant)];
    const first = changeCoils(store, article, coils, { name: `Coils of ${name} there` })[0];
    return first ? text(first.message, units) : null;
  };
  const add = (): void => {
    if (typed.trim() === "") return;
    const refused = attempt();
    setRefusal(refused);
    if (refused === null) setTyped("");
  };
  return (
    <form
      class="add-coils"
      onSubmit={(event) => {
        event.preventDefault();
        add();
      }}
    >
      <label for={id}>Add coils</label>
      <input
        id={id}
        type="text"
        autocomplete="off"
        spellcheck={false}
        value={typed}
        aria-invalid={refusal !== null}
        aria-describedby={`${id}-hint`}
        onInput={(event) => setTyped(event.currentTarget.value)}
      />
      <button type="submit" class="quiet-button">
        Add
      </button>
      <span class="field-hint" id={`${id}-hint`}>
        {units === "us" ? "such as 640 ft, or 3 × 1000 ft" : "such as 195 m, or 3 × 300 m"}
      </span>
      {refusal && (
        <span class="field-refusal" role="alert">
          {refusal}
        </span>
      )}
    </form>
  );
}

/** More coils than this at once is a slip of the finger. */
const most = 100;

import { useId, useState } from "preact/hooks";
import { headWorkNames } from "../../core/drip/water-words.ts";
import type { Finding } from "../../core/finding.ts";
import type { Json, JsonObject } from "../../core/project/project.ts";
import { type HeadWork, type HeadWorkKind, headWorkKinds } from "../../core/project/water-settings.ts";
import { formatQuantity } from "../../core/units.ts";
import { changeSetting } from "../commands/change-setting.ts";
import type { StepName } from "../commands/edit.ts";
import type { Store } from "../store.ts";
import { useStore } from "../store-context.ts";
import { OptionalQuantityField } from "../strip/optional-quantity-field.tsx";
import { QuantityField } from "../strip/quantity-field.tsx";
import { StagePart } from "../strip/stage-part.tsx";
import { capital } from "./capital.ts";
import { likeOf } from "./like.ts";
import { listAsWritten, moved, withEntryMember } from "./written-list.ts";

const path = "water.headWorks";

/** What stands between the water and the main line, in the order water meets it. */
export function HeadWorks({ works }: { readonly works: readonly HeadWork[] }) {
  const store = useStore();
  const units = store.units.value;
  const lost_kpa = works.reduce((sum, { dirtyLoss_kpa }) => sum + dirtyLoss_kpa, 0);
  const told = `${works.length} parts lose ${formatQuantity("pressure", lost_kpa, units)}, filter dirty`;
  return (
    <StagePart name="Before the main line" told={works.length === 0 ? "nothing" : told}>
      <p class="aside">In the order the water meets them. Losses are usual ones: put in those of your parts.</p>
      <ol class="head-works">
        {works.map((work, at) => (
          // A part has no name of its own; its place in the list is what the file knows it by.
          <Part key={`${work.kind} ${at} of ${works.length}`} works={works} at={at} work={work} />
        ))}
      </ol>
      <AddPart works={works} />
    </StagePart>
  );
}

interface PartProps {
  readonly works: readonly HeadWork[];
  readonly work: HeadWork;
  readonly at: number;
}

function Part({ works, work, at }: PartProps) {
  const store = useStore();
  const units = store.units.value;
  const name = capital(headWorkNames[work.kind]);
  const like = likeOf(units);
  const change = (member: string) => (meant: Json, step: StepName) =>
    write(
      store,
      asWritten(store, works).map((each, i) => (i === at ? withEntryMember(each, member, meant) : each)),
      step,
    );
  const moveTo = (to: number, where: string): void => {
    write(store, moved(asWritten(store, works), at, to), { name: `${name} ${where}` });
  };
  const [first, last] = [at === 0, at === works.length - 1];
  return (
    <li>
      <details>
        <summary>
          {name} <small>{lossText()}</small>
        </summary>
        <div class="fields">
          <QuantityField
            label={work.kind === "filter" ? "Loses, clean" : "Loses"}
            kind="pressure"
            value={work.loss_kpa}
            path=""
            change={change("loss")}
          />
          {work.kind === "filter" && (
            <QuantityField
              label="Loses, due for cleaning"
              kind="pressure"
              value={work.dirtyLoss_kpa}
              path=""
              change={change("dirtyLoss")}
            />
          )}
          <OptionalQuantityField
            label="That is at a flow of"
            kind="flow"
            value={work.atFlow_lph}
            like={like.flow_lph}
            path=""
            without="lost at any flow; with a flow, losses grow with its square"
            change={change("atFlow")}
          />
          {work.kind === "regulator" && (
            <QuantityField
              label="Lets through at most"
              kind="pressure"
              value={work.outlet_kpa ?? like.pressure_kpa}
              path=""
              change={change("outlet")}
            />
          )}
        </div>
      </details>
      <button
        type="button"
        class="quiet-button"
        disabled={first}
        aria-label={`${name}, part ${at + 1}: earlier`}
        title="Earlier"
        onClick={() => moveTo(at - 1, "earlier")}
      >
        ↑
      </button>
      <button
        type="button"
        class="quiet-button"
        disabled={last}
        aria-label={`${name}, part ${at + 1}: later`}
        title="Later"
        onClick={() => moveTo(at + 1, "later")}
      >
        ↓
      </button>
      <button
        type="button"
        class="quiet-button"
        aria-label={`Take out ${name}, part ${at + 1}`}
        title="Take out"
        onClick={() =>
          write(
            store,
            asWritten(store, works).filter((_, i) => i !== at),
            { name: `Take out ${name}` },
          )
        }
      >
        ×
      </button>
    </li>
  );

  function lossText(): string {
    const pressure = (kpa: number) => formatQuantity("pressure", kpa, units);
    const most = work.outlet_kpa === null ? "" : `, lets ${pressure(work.outlet_kpa)} through`;
    if (work.dirtyLoss_kpa === 0) return `loses nothing${most}`;
    if (work.dirtyLoss_kpa > work.loss_kpa) {
      return `loses ${pressure(work.loss_kpa)}, dirty ${pressure(work.dirtyLoss_kpa)}${most}`;
    }
    return `loses ${pressure(work.loss_kpa)}${most}`;
  }
}

function AddPart({ works }: { readonly works: readonly HeadWork[] }) {
  const store = useStore();
  const [kind, setKind] = useState<HeadWorkKind>("regulator");
  const id = useId();
  return (
    <div class="add-part">
      <label for={id} class="unseen">
        Part to add
      </label>
      <select
        id={id}
        class="entry-input"
        value={kind}
        onChange={(event) => setKind(headWorkKinds.find((each) => each === event.currentTarget.value) ?? "regulator")}
      >
        {headWorkKinds.map((each) => (
          <option key={each} value={each}>
            {capital(headWorkNames[each])}
          </option>
        ))}
      </select>
      <button
        type="button"
        class="quiet-button"
        onClick={() => write(store, [...asWritten(store, works), { kind }], { name: `Add: ${headWorkNames[kind]}` })}
      >
        Add at the end
      </button>
    </div>
  );
}

/** What is in force came from what is usual of each kind, when the file states none. */
function asWritten(store: Store, works: readonly HeadWork[]): readonly JsonObject[] {
  return listAsWritten(
    store,
    path,
    works.map(({ kind }) => ({ kind })),
  );
}

function write(store: Store, entries: readonly JsonObject[], step: StepName): readonly Finding[] {
  return changeSetting(store, path, entries, step);
}

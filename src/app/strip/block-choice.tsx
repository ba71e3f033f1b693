import { useId } from "preact/hooks";
import { chooseBlock } from "../commands/choose-row.ts";
import { useStore } from "../store-context.ts";

/** Which block the fields, the handle and the chart are for; nothing when there is only one. */
export function BlockChoice() {
  const store = useStore();
  const blocks = store.shownPlan.value?.project.blocks ?? [];
  const name = useId();
  if (blocks.length < 2) return null;
  return (
    <fieldset class="block-choice">
      <legend>Block</legend>
      {blocks.map(({ id, name: blockName }) => (
        <label key={id}>
          <input
            type="radio"
            name={name}
            checked={store.blockId.value === id}
            onChange={() => chooseBlock(store, id)}
          />
          <span>{blockName}</span>
        </label>
      ))}
    </fieldset>
  );
}

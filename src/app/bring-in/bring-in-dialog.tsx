import "./bring-in.css";
import { useEffect, useRef, useState } from "preact/hooks";
import type { TakenThing } from "../../core/drawing/take-found.ts";
import { text, type UnitSystem } from "../../core/units.ts";
import { useStore } from "../store-context.ts";
import { count } from "../strip/count.ts";
import { Sentences } from "./bring-in-sentences.tsx";
import type { Brought } from "./brought.ts";
import { CornersDesk } from "./corners-desk.tsx";
import { FileDesk } from "./file-desk.tsx";
import { useOwnId } from "./own-id.ts";
import { type BeginProject, takeIn } from "./take-in.ts";
import { UnitChoice } from "./unit-choice.tsx";

type Told = { readonly title: string; readonly sentences: readonly string[] };

interface BringInDialogProps {
  readonly brought: Brought;
  readonly begin: BeginProject;
  readonly onGone: () => void;
}

/** Reads a file or pasted corners, shows what is in them, and takes in what the person says. */
export function BringInDialog({ brought, begin, onGone }: BringInDialogProps) {
  const store = useStore();
  const dialog = useRef<HTMLDialogElement>(null);
  const isNew = store.history.value === null;
  const [own, setOwn] = useState<UnitSystem>(/^en-US\b/i.test(navigator.language) ? "us" : "metric");
  const [told, setTold] = useState<Told | null>(null);
  const [beganNew] = useState(isNew);
  const id = useOwnId();
  useEffect(() => dialog.current?.showModal(), []);
  const close = (): void => dialog.current?.close();
  const units = isNew ? own : store.units.value;
  const take = (chosen: readonly TakenThing[], from: string): void => {
    const { taken, findings } = takeIn(store, begin, chosen, from, units);
    const sentences = findings.map(({ message, remedy }) => `${text(message, units)} ${text(remedy, units)}`);
    const were = taken === 1 ? "is" : "are";
    if (taken > 0 && findings.length === 0) {
      if (!beganNew)
        store.keeping.message.value = {
          text: `${count(taken, "thing")} from ${from} ${were} in the project now.`,
          actions: [],
        };
      close();
    } else {
      setTold({
        title: taken > 0 ? `${count(taken, "thing")} ${were} in the project now` : "Nothing was taken in",
        sentences,
      });
    }
  };
  const title = brought.kind === "file" ? `Bring in ${brought.file.name}` : "Bring in corners";
  const desk = { units, onTake: take, onClose: close };
  return (
    <dialog ref={dialog} class="open-dialog bring-in" aria-labelledby={id} onClose={onGone}>
      <header>
        <h2 id={id}>{told?.title ?? title}</h2>
        {isNew && !told && <UnitChoice units={own} onUnits={setOwn} />}
      </header>
      {told ? (
        <ToldPart told={told} onClose={close} />
      ) : brought.kind === "file" ? (
        <FileDesk file={brought.file} {...desk} />
      ) : (
        <CornersDesk {...desk} />
      )}
    </dialog>
  );
}

function ToldPart({ told: { sentences }, onClose }: { readonly told: Told; readonly onClose: () => void }) {
  const button = useRef<HTMLButtonElement>(null);
  useEffect(() => button.current?.focus(), []);
  return (
    <>
      <Sentences sentences={sentences} />
      <div class="bring-in-foot">
        <p class="aside">One step: undo takes all of it back.</p>
        <button type="button" class="strong-button" ref={button} onClick={onClose}>
          Done
        </button>
      </div>
    </>
  );
}

import { useId, useRef, useState } from "preact/hooks";
import { EmptyMap } from "../first-screen/empty-map.tsx";
import { OpenOwnFile } from "../first-screen/open-own-file.tsx";
import { SampleList } from "../first-screen/sample-list.tsx";
import { useStore } from "../store-context.ts";
import { words } from "../words.ts";
import { ProjectList } from "./project-list.tsx";

/** Saving the project in a file, and the way to every other one. */
export function ProjectMenu() {
  const { keeping } = useStore();
  const dialog = useRef<HTMLDialogElement>(null);
  const titleId = useId();
  const [isOpen, setOpen] = useState(false);
  const close = (): void => dialog.current?.close();
  const keeper = keeping.keeper.value;
  const open = (): void => {
    void keeper?.refresh().catch(() => undefined);
    setOpen(true);
    dialog.current?.showModal();
  };
  const file = keeping.fileName.value;
  return (
    <>
      <button type="button" class="save-button" disabled={!keeper} onClick={() => void keeper?.save()}>
        Save<span class="unseen">{file === null ? " as a file" : ` in ${file}`}</span>
      </button>
      <button type="button" onClick={open}>
        {words.open}
      </button>
      <dialog ref={dialog} class="open-dialog" aria-labelledby={titleId} onClose={() => setOpen(false)}>
        <h2 id={titleId}>Projects</h2>
        {isOpen && <Choices onChosen={close} />}
        <form method="dialog">
          <button type="submit" class="quiet-button">
            {words.close}
          </button>
        </form>
      </dialog>
    </>
  );
}

/** What there is to do with this project and to open in its place. */
function Choices({ onChosen: close }: { readonly onChosen: () => void }) {
  const { keeping } = useStore();
  const keeper = keeping.keeper.value;
  return (
    <>
      <p class="aside">
        <StayingNote />
      </p>
      <div class="this-project">
        <button
          type="button"
          disabled={!keeper}
          onClick={() => {
            close();
            void keeper?.saveAs();
          }}
        >
          Save as a file
        </button>
        <button
          type="button"
          disabled={!keeper || keeping.id.value === null}
          onClick={() => void keeper?.duplicate(keeping.id.value ?? "")}
        >
          Duplicate this project
        </button>
        <OpenOwnFile onChosen={close} />
      </div>
      <EmptyMap onChosen={close} />
      {(keeping.list.value?.length ?? 0) > 0 && (
        <>
          <h3>Kept in this browser</h3>
          <ProjectList onChosen={close} />
        </>
      )}
      <h3>{words.samplesTitle}</h3>
      <SampleList onChosen={close} />
    </>
  );
}

/** Whether the browser may clear what is kept. */
function StayingNote() {
  const { keeping } = useStore();
  if (keeping.status.value.kind === "untouched")
    return <>A project is kept in this browser from your first change on.</>;
  if (keeping.isPersistent.value) return <>Kept in this browser until you delete it.</>;
  return <>Kept in this browser. It may clear that when the disk runs low: save a file as well.</>;
}

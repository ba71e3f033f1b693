import { useRef } from "preact/hooks";
import { openFile } from "../commands/open-file.ts";
import { FileInput, openedFiles } from "../file-input.tsx";
import { useStore } from "../store-context.ts";
import { words } from "../words.ts";

interface OpenOwnFileProps {
  readonly onChosen?: () => void;
}

/** Opens a file of one's own: through the browser's file window that can write it again, where there is one. */
export function OpenOwnFile({ onChosen }: OpenOwnFileProps) {
  const store = useStore();
  const input = useRef<HTMLInputElement>(null);
  const choose = async (): Promise<void> => {
    const keeper = store.keeping.keeper.value;
    if (!keeper || !(await keeper.chooseFile())) input.current?.click();
    else onChosen?.();
  };
  return (
    <>
      <button type="button" class="strong-button" onClick={() => void choose()}>
        {words.openOwn}
      </button>
      <FileInput
        field={input}
        accept={openedFiles}
        take={(file) => {
          onChosen?.();
          void openFile(store, file);
        }}
      />
    </>
  );
}

import { serializeProject } from "../../core/project/serialize.ts";
import { openFile } from "../commands/open-file.ts";
import { download, fileStem } from "../download.ts";
import { current } from "../history.ts";
import type { Store } from "../store.ts";
import { isGivenUp, openOptions, pickerOptions } from "./file-pickers.ts";
import type { Keeper } from "./keeping-state.ts";
import { fileFault, stampOf, standingOf, writeFile } from "./linked-file.ts";
import type { FileLink } from "./records.ts";
import { sayFinding, whyNoEdit } from "./why-no-edit.ts";

interface Parts {
  readonly link: () => FileLink | null;
  readonly setLink: (link: FileLink) => Promise<void>;
}

/** Saving the project on the page in a file of the person's own, and opening one. */
export function saveInFile(store: Store, { link, setLink }: Parts): Pick<Keeper, "save" | "saveAs" | "chooseFile"> {
  const { message } = store.keeping;

  const write = async (handle: FileSystemFileHandle, text: string): Promise<void> => {
    try {
      await setLink(await writeFile(handle, text));
      message.value = { text: `Saved in “${handle.name}”.`, actions: [] };
    } catch (error) {
      tellFault(error, handle.name);
    }
  };

  const tellFault = (error: unknown, name: string): void => {
    message.value = {
      text: fileFault(error, name),
      actions: [{ label: "Save as another file", run: () => void saveAs() }],
    };
  };

  const saveAs = async (): Promise<void> => {
    const ready = textToSave(store);
    if (!ready) return;
    const suggestedName = `${fileStem(ready.name)}.geojson`;
    if (!window.showSaveFilePicker) {
      download(suggestedName, ready.text, "application/geo+json");
      message.value = { text: `“${suggestedName}” went to where this browser puts downloads.`, actions: [] };
      return;
    }
    try {
      await write(await window.showSaveFilePicker({ ...pickerOptions, suggestedName }), ready.text);
    } catch (error) {
      if (!isGivenUp(error)) tellFault(error, suggestedName);
    }
  };

  return {
    saveAs,
    save: async () => {
      const linked = link();
      if (!linked) return saveAs();
      const ready = textToSave(store);
      if (!ready) return;
      const { handle } = linked;
      try {
        switch (await standingOf(linked)) {
          case "as it was":
            return await write(handle, ready.text);
          case "refused":
            message.value = {
              text: `The browser was not allowed to write “${handle.name}”, so it is as it was.`,
              actions: [{ label: "Save as another file", run: () => void saveAs() }],
            };
            return;
          case "changed":
            message.value = {
              text: `“${handle.name}” was changed by something else since it was read or written here.`,
              actions: [
                { label: "Write over it", run: () => void write(handle, ready.text) },
                { label: "Save as another file", run: () => void saveAs() },
              ],
            };
        }
      } catch (error) {
        tellFault(error, handle.name);
      }
    },
    chooseFile: async () => {
      if (!window.showOpenFilePicker) return false;
      try {
        const [handle] = await window.showOpenFilePicker(openOptions);
        if (!handle) return true;
        const file = await handle.getFile();
        await openFile(store, file, { handle, stamp: await stampOf(file) });
      } catch (error) {
        if (!isGivenUp(error)) message.value = { text: "The file could not be read.", actions: [] };
      }
      return true;
    },
  };
}

/** The last step as a file. Null, and said why, for a file that a newer program wrote: it is never written over. */
function textToSave(store: Store): { readonly name: string; readonly text: string } | null {
  const history = store.history.peek();
  if (!history) return null;
  const why = store.keeping.isReading.peek() ? null : whyNoEdit(store);
  if (why) {
    sayFinding(store, why);
    return null;
  }
  const { project } = current(history);
  return { name: project.name, text: serializeProject(project) };
}

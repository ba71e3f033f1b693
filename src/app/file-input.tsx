import type { RefObject } from "preact";
import { openedEndings } from "./opened-endings.ts";

/** The unseen field behind a button that opens a file; choosing the same file again counts as a choice. */
export function FileInput({
  field,
  accept,
  take,
}: {
  readonly field: RefObject<HTMLInputElement | null>;
  readonly accept: string;
  readonly take: (file: File) => void;
}) {
  return (
    <input
      ref={field}
      type="file"
      hidden
      accept={accept}
      onChange={(event) => {
        const file = event.currentTarget.files?.[0];
        event.currentTarget.value = "";
        if (file) take(file);
      }}
    />
  );
}

/** What a project, and a file that can be brought into one, may be called. */
export const openedFiles = [...openedEndings, "application/geo+json", "application/json"].join();

/** What a project file may be called. */
export const projectFiles = ".geojson,.json,application/geo+json,application/json";

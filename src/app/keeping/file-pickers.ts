import { openedEndings } from "../opened-endings.ts";

interface FilePickerType {
  readonly description: string;
  readonly accept: Readonly<Record<string, readonly string[]>>;
}

interface FilePickerOptions {
  readonly id?: string;
  readonly types: readonly FilePickerType[];
}

declare global {
  interface Window {
    /** Not in every browser. */
    readonly showOpenFilePicker?: (options: FilePickerOptions) => Promise<readonly FileSystemFileHandle[]>;
    readonly showSaveFilePicker?: (
      options: FilePickerOptions & { readonly suggestedName: string },
    ) => Promise<FileSystemFileHandle>;
  }
  interface FileSystemHandle {
    /** Not in every browser. */
    queryPermission?(options: { readonly mode: "read" | "readwrite" }): Promise<PermissionState>;
    requestPermission?(options: { readonly mode: "read" | "readwrite" }): Promise<PermissionState>;
  }
}

/** What the file windows of the browser show. */
export const pickerOptions: FilePickerOptions = {
  id: "tautrow",
  types: [{ description: "Project (GeoJSON)", accept: { "application/geo+json": [".geojson", ".json"] } }],
};

/** The same for a file to open: also what is brought in out of other formats. */
export const openOptions: FilePickerOptions = {
  id: "tautrow",
  types: [{ description: "Projects and files of open formats", accept: { "application/geo+json": openedEndings } }],
};

/** True when the person closed the window without choosing. */
export function isGivenUp(error: unknown): boolean {
  return error instanceof DOMException && error.name === "AbortError";
}

/** A file that is read in parts: a `Blob`, or what reads like one. */
export interface FileBytes {
  readonly size: number;
  slice(start: number, end: number): { arrayBuffer(): Promise<ArrayBuffer> };
}

/** Part of a file, in bytes. */
interface Slice {
  readonly offset: number;
  readonly length: number;
}

/** What the TIFF reader asks its bytes of: parts of a file as they are needed, in a page, a worker or Node alike. */
export function blobSource(file: FileBytes) {
  const bytes = ({ offset, length }: Slice): Promise<ArrayBuffer> => file.slice(offset, offset + length).arrayBuffer();
  return {
    fetch: (slices: readonly Slice[], signal?: AbortSignal): Promise<ArrayBuffer[]> => {
      signal?.throwIfAborted();
      return Promise.all(slices.map(bytes));
    },
    fetchSlice: async (slice: Slice) => ({ ...slice, data: await bytes(slice) }),
    fileSize: file.size,
    close: () => Promise.resolve(),
  };
}

import type { FileLink, FileStamp } from "./records.ts";

/** What a file looks like now. */
export async function stampOf(file: File): Promise<FileStamp> {
  return { lastModified: file.lastModified, size: file.size, digest: await digestOf(await file.arrayBuffer()) };
}

/** SHA-256 in hexadecimal; null where the browser has none, as at addresses that are not secure. */
async function digestOf(bytes: ArrayBuffer): Promise<string | null> {
  const { subtle }: { readonly subtle?: SubtleCrypto } = crypto;
  if (!subtle) return null;
  const digest = new Uint8Array(await subtle.digest("SHA-256", bytes));
  return [...digest].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}

/** True when a file is no longer what it was. A file that was only touched, with the same text in it, has not changed. */
export function hasChanged(was: FileStamp, is: FileStamp): boolean {
  if (was.lastModified === is.lastModified && was.size === is.size) return false;
  return was.size !== is.size || was.digest === null || was.digest !== is.digest;
}

/** How it stands with a file that is about to be written. */
export async function standingOf({ handle, stamp }: FileLink): Promise<"as it was" | "changed" | "refused"> {
  if ((await permission(handle)) !== "granted") return "refused";
  return stamp && hasChanged(stamp, await stampOf(await handle.getFile())) ? "changed" : "as it was";
}

async function permission(handle: FileSystemFileHandle): Promise<PermissionState> {
  const given = (await handle.queryPermission?.({ mode: "readwrite" })) ?? "granted";
  return given === "granted" ? given : ((await handle.requestPermission?.({ mode: "readwrite" })) ?? given);
}

/** Writes a text into a file; the file as it is then. What goes wrong leaves the file as it was. */
export async function writeFile(handle: FileSystemFileHandle, text: string): Promise<FileLink> {
  const stream = await handle.createWritable();
  try {
    await stream.write(text);
    await stream.close();
  } catch (error) {
    await stream.abort().catch(() => undefined);
    throw error;
  }
  return { handle, stamp: await stampOf(await handle.getFile()) };
}

/** Why a file could not be written, in words. */
export function fileFault(error: unknown, name: string): string {
  const code = error instanceof DOMException ? error.name : "";
  switch (code) {
    case "NotFoundError":
      return `“${name}” is no longer where it was.`;
    case "NotAllowedError":
    case "SecurityError":
      return `The browser was not allowed to write “${name}”.`;
    case "QuotaExceededError":
      return `There is no room on the disk for “${name}”. The file is as it was.`;
    case "NoModificationAllowedError":
      return `“${name}” is in use by another program.`;
    default:
      return `“${name}” could not be written${error instanceof Error && error.message ? ` (${error.message})` : ""}. The file is as it was.`;
  }
}

/** Hands a text to the person as a file. */
export function download(name: string, text: string, type: string): void {
  downloadBlob(name, new Blob([text], { type }));
}

/** Hands what is there in bytes to the person as a file. */
export function downloadBlob(name: string, blob: Blob): void {
  const address = URL.createObjectURL(blob);
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
  // The browser reads the address after this task; it is given back once that has surely begun.
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}

/** The beginning of file names, made of a project's name: letters and digits of any script, the rest as hyphens. */
export function fileStem(projectName: string): string {
  const stem = projectName
    .normalize("NFC")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, "-")
    .replace(/^-+|-+$/g, "")
    .slice(0, 60);
  return stem || "project";
}

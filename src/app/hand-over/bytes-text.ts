/** "840 bytes", "12.4 kB", "31.0 MB": sizes of files, in thousands. */
export function bytesText(bytes: number): string {
  if (bytes < 1000) return `${bytes} bytes`;
  if (bytes < 1e6) return `${(bytes / 1000).toFixed(1)} kB`;
  return `${(bytes / 1e6).toFixed(1)} MB`;
}

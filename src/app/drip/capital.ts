/** A sentence, or a name at the beginning of one, with a capital. */
export function capital(words: string): string {
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
}

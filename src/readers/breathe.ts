/** Lets what waits have its turn (a wish to stop, a page's own work), then goes on. */
export function breathe(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, 0));
}

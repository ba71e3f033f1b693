export interface RowWindow {
  readonly first: number;
  /** One past the last. */
  readonly past: number;
}

const spare = 4;

/** Which lines of a long list are in view, with a few spare ones on either side. */
export function rowWindow(lines: number, lineHeight_px: number, scrolled_px: number, height_px: number): RowWindow {
  const first = Math.max(0, Math.min(lines, Math.floor(scrolled_px / lineHeight_px) - spare));
  const past = Math.min(lines, Math.ceil((scrolled_px + height_px) / lineHeight_px) + spare);
  return { first, past: Math.max(first, past) };
}

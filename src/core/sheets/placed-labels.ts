/** A text that would like to stand at a place along the drawing, the important ones first. */
export interface Label {
  readonly x: number;
  readonly text: string;
}

/** Room between two texts of a line. */
const apart_px = 10;

/**
 * Texts in as few lines as will hold them, none over another and none past the ends of the drawing; those without room are left out, and said
 * elsewhere. `x` is the middle of the text; `line` is counted from 0.
 */
export function placedLabels<L extends Label>(
  labels: readonly L[],
  lines: number,
  letter_px: number,
  width: number,
): readonly (L & { readonly line: number })[] {
  const taken: { line: number; from: number; to: number }[] = [];
  return labels.flatMap((label) => {
    const { x, text } = label;
    const half = (text.length * letter_px) / 2;
    const middle = Math.min(Math.max(x, half + 2), Math.max(half + 2, width - half - 2));
    const [from, to] = [middle - half - apart_px / 2, middle + half + apart_px / 2];
    const line = Array.from({ length: lines }, (_, i) => i).find(
      (i) => !taken.some((each) => each.line === i && each.from < to && from < each.to),
    );
    if (line === undefined) return [];
    taken.push({ line, from, to });
    return [{ ...label, x: middle, line }];
  });
}

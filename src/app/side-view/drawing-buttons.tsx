import { download, fileStem } from "../download.ts";
import { printDrawing } from "./print-drawing.ts";

/** Takes the drawing off the page: as a file as it is shown, or on paper with all of it. */
export function DrawingButtons({
  name,
  title,
  draw,
}: {
  /** Of the file, without its ending. */
  readonly name: string;
  readonly title: string;
  readonly draw: (as: "shown" | "whole") => string | null;
}) {
  const save = (): void => {
    const svg = draw("shown");
    if (svg !== null) download(`${fileStem(name)}.svg`, svg, "image/svg+xml");
  };
  const print = (): void => {
    const svg = draw("whole");
    if (svg !== null) printDrawing(title, svg);
  };
  return (
    <>
      <button type="button" class="quiet-button" onClick={save}>
        Save the drawing
      </button>
      <button type="button" class="quiet-button" onClick={print}>
        Print the drawing
      </button>
    </>
  );
}

import { useEffect, useRef, useState } from "preact/hooks";
import { DrawingButtons } from "../side-view/drawing-buttons.tsx";
import { SvgPart } from "../side-view/svg-part.tsx";

/** A chart as the core draws it for the room there is, and what it says in words. */
interface DrawnChart {
  readonly svg: string;
  readonly reading: readonly string[];
}

interface ChartPartProps {
  readonly title: string;
  /** Of the file, without its ending. */
  readonly file: string;
  readonly draw: (width_px: number) => DrawnChart | null;
  /** The drawing by itself, with its words, for file and paper. */
  readonly whole: () => string | null;
}

/** A drawing of the step, as wide as the step is; to be saved or printed. */
export function ChartPart({ title, file, draw, whole }: ChartPartProps) {
  const room = useRef<HTMLDivElement>(null);
  const [width_px, setWidth] = useState(0);
  useEffect(() => {
    if (!room.current) return;
    const watch = new ResizeObserver(([entry]) => setWidth(Math.floor(entry?.contentRect.width ?? 0)));
    watch.observe(room.current);
    return () => watch.disconnect();
  }, []);
  const chart = width_px < 100 ? null : draw(width_px);
  return (
    <div class="drip-chart" ref={room}>
      {chart && (
        <>
          <SvgPart name="drip-drawing" svg={chart.svg} />
          <p class="aside">{chart.reading.join(" ")}</p>
          <p class="chart-buttons">
            <DrawingButtons name={file} title={title} draw={whole} />
          </p>
        </>
      )}
    </div>
  );
}

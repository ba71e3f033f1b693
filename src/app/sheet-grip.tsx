import { useRef } from "preact/hooks";

/** How far the steps are pulled up on a phone. */
export const sheetStops = ["low", "half", "tall"] as const;
export type SheetStop = (typeof sheetStops)[number];

interface SheetGripProps {
  readonly stop: SheetStop;
  readonly onStop: (stop: SheetStop) => void;
  /** Height in pixels while a finger holds the grip; null when it is let go. */
  readonly onHeld: (height_px: number | null) => void;
}

const names: Readonly<Record<SheetStop, string>> = {
  low: "Pull up the steps",
  half: "More room for the steps",
  tall: "More map",
};
/** A finger that moves less than this has tapped. */
const tap_px = 6;

/** What the sheet of steps is pulled by on a phone: a tap, a drag, or the arrow keys. */
export function SheetGrip({ stop, onStop, onHeld }: SheetGripProps) {
  const held = useRef<{ readonly from_px: number; isDrag: boolean } | null>(null);
  const at = sheetStops.indexOf(stop);
  const step = (by: number): void => onStop(sheetStops[Math.min(2, Math.max(0, at + by))] ?? stop);

  const heightAt = (event: PointerEvent): number => {
    const sheet = event.currentTarget instanceof HTMLElement ? event.currentTarget.parentElement : null;
    return sheet ? sheet.getBoundingClientRect().bottom - event.clientY + 8 : 0;
  };
  const letGo = (event: PointerEvent): void => {
    const was = held.current;
    held.current = null;
    onHeld(null);
    if (!was?.isDrag) return;
    const sheet = event.currentTarget instanceof HTMLElement ? event.currentTarget.parentElement : null;
    const whole_px = sheet?.parentElement?.clientHeight ?? 1;
    const share = heightAt(event) / whole_px;
    onStop(share < 0.33 ? "low" : share < 0.68 ? "half" : "tall");
  };
  return (
    <button
      type="button"
      class="sheet-grip"
      aria-expanded={stop === "tall"}
      aria-keyshortcuts="ArrowUp ArrowDown"
      onPointerDown={(event) => {
        held.current = { from_px: event.clientY, isDrag: false };
        event.currentTarget.setPointerCapture(event.pointerId);
      }}
      onPointerMove={(event) => {
        const now = held.current;
        if (!now) return;
        if (Math.abs(event.clientY - now.from_px) > tap_px) now.isDrag = true;
        if (now.isDrag) onHeld(heightAt(event));
      }}
      onPointerUp={(event) => {
        // The click that follows a drag is no tap.
        if (held.current?.isDrag) event.currentTarget.dataset.dragged = "";
        letGo(event);
      }}
      onPointerCancel={letGo}
      onClick={(event) => {
        const wasDragged = event.currentTarget.dataset.dragged !== undefined;
        delete event.currentTarget.dataset.dragged;
        if (!wasDragged) onStop(stop === "half" ? "tall" : "half");
      }}
      onKeyDown={(event) => {
        if (event.key !== "ArrowUp" && event.key !== "ArrowDown") return;
        event.preventDefault();
        step(event.key === "ArrowUp" ? 1 : -1);
      }}
    >
      {names[stop]}
    </button>
  );
}

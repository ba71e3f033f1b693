import { useEffect, useLayoutEffect, useRef, useState } from "preact/hooks";
import { text } from "../../core/units.ts";
import { useStore } from "../store-context.ts";
import { accountId, useFigures } from "./figure-state.ts";
import { besideOf, type Place } from "./place-beside.ts";

/** How the number that is asked about came about: formula, what went in, source. Escape sends it away; a pointer may rest on it. */
export function AccountPopover() {
  const { asked } = useFigures();
  const { units } = useStore();
  const box = useRef<HTMLDivElement>(null);
  const [place, setPlace] = useState<Place | null>(null);
  const shown = asked.value;

  useLayoutEffect(() => {
    if (!shown) return;
    const lay = (): void => {
      const [own, room] = [box.current?.getBoundingClientRect(), shown.element.getBoundingClientRect()];
      if (own) setPlace(besideOf(room, own, { width: document.documentElement.clientWidth, height: innerHeight }));
    };
    lay();
    window.addEventListener("scroll", lay, { capture: true, passive: true });
    window.addEventListener("resize", lay);
    return () => {
      window.removeEventListener("scroll", lay, { capture: true });
      window.removeEventListener("resize", lay);
    };
  }, [shown, units.value]);

  useEffect(() => {
    if (!shown) return;
    const away = (event: KeyboardEvent): void => {
      if (event.key !== "Escape") return;
      // It takes this Escape: what lies under it stays as it is.
      event.stopPropagation();
      asked.value = null;
    };
    const elsewhere = (event: PointerEvent): void => {
      if (!(event.target instanceof Node)) return;
      if (!box.current?.contains(event.target) && !shown.element.contains(event.target)) asked.value = null;
    };
    window.addEventListener("keydown", away, { capture: true });
    window.addEventListener("pointerdown", elsewhere, { capture: true });
    return () => {
      window.removeEventListener("keydown", away, { capture: true });
      window.removeEventListener("pointerdown", elsewhere, { capture: true });
    };
  }, [shown, asked]);

  if (!shown) return null;
  const { account, label, value } = shown;
  return (
    <div
      class="account"
      id={accountId}
      role="tooltip"
      ref={box}
      style={place ? { left: `${place.left}px`, top: `${place.top}px` } : { visibility: "hidden" }}
      onPointerLeave={() => {
        if (!shown.isHeld && document.activeElement !== shown.element) asked.value = null;
      }}
    >
      <p class="account-title">
        <strong>{value}</strong> {label}
      </p>
      <p>{text(account.formula, units.value)}</p>
      {account.inputs.length > 0 && (
        <dl>
          {account.inputs.map((input) => (
            <div key={input.name}>
              <dt>{input.name}</dt>
              <dd>{text(input.value, units.value)}</dd>
            </div>
          ))}
        </dl>
      )}
      <p class="account-source">Source: {account.source}</p>
    </div>
  );
}

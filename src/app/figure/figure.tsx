import { useEffect, useRef } from "preact/hooks";
import type { Account } from "../../core/account.ts";
import { accountId, useFigures } from "./figure-state.ts";

interface FigureProps {
  /** The number as it is read, with its unit. */
  readonly value: string;
  /** What it is the number of. */
  readonly label: string;
  /** Asked for only when someone wants to know. */
  readonly account: () => Account | null;
  /** -1 where the number is reached by arrow keys, or stands a second time where the keyboard reaches it. */
  readonly tabIndex?: number;
  readonly onClick?: () => void;
}

/** Before a pointer that moves on has left for good: time to reach the account itself. */
const leave_ms = 250;

/** A number that tells how it came about when it is pointed at, focused or tapped. */
export function Figure({ value, label, account, tabIndex = 0, onClick }: FigureProps) {
  const { asked } = useFigures();
  const element = useRef<HTMLButtonElement>(null);
  const isPressed = useRef(false);
  const isShown = asked.value !== null && asked.value.element === element.current;

  const ask = (isHeld: boolean): void => {
    const told = account();
    if (element.current && told) asked.value = { element: element.current, value, label, account: told, isHeld };
  };
  const leave = (): void => {
    const shown = element.current;
    setTimeout(() => {
      const now = asked.peek();
      if (now?.element !== shown || now?.isHeld || document.activeElement === shown) return;
      if (document.getElementById(accountId)?.matches(":hover") || shown?.matches(":hover")) return;
      asked.value = null;
    }, leave_ms);
  };

  // The number changes under an open account: what is told is told of the new one.
  useEffect(() => {
    const now = asked.peek();
    if (now && now.element === element.current && now.value !== value) ask(now.isHeld);
  }, [value]);
  useEffect(() => {
    const shown = element.current;
    return () => {
      if (shown && asked.peek()?.element === shown) asked.value = null;
    };
  }, [asked]);

  return (
    <button
      ref={element}
      type="button"
      class={isShown ? "figure is-asked" : "figure"}
      tabIndex={tabIndex}
      aria-describedby={isShown ? accountId : undefined}
      onPointerEnter={(event) => {
        if (event.pointerType === "mouse" && !asked.peek()?.isHeld) ask(false);
      }}
      onPointerLeave={leave}
      onPointerDown={() => {
        isPressed.current = true;
      }}
      onFocus={() => {
        // A press asks by its click.
        if (!isPressed.current) ask(false);
        isPressed.current = false;
      }}
      onBlur={() => {
        if (asked.peek()?.element === element.current) asked.value = null;
      }}
      onClick={() => {
        isPressed.current = false;
        onClick?.();
        const now = asked.peek();
        if (now?.element === element.current && now?.isHeld) asked.value = null;
        else ask(true);
      }}
    >
      {value}
    </button>
  );
}

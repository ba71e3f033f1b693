import type { ComponentChildren } from "preact";

interface YesChoiceProps {
  readonly isOn: boolean;
  readonly take: (isOn: boolean) => void;
  readonly children: ComponentChildren;
}

/** Something that is wanted or not. */
export function YesChoice({ isOn, take, children }: YesChoiceProps) {
  return (
    <label class="hand-over-yes">
      <input type="checkbox" checked={isOn} onChange={(event) => take(event.currentTarget.checked)} />
      <span>{children}</span>
    </label>
  );
}

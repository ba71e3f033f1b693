import type { ComponentChildren } from "preact";

/** A part of a step with a name and a word of what is in it, opened to change it. */
export function StagePart({
  name,
  told,
  children,
}: {
  readonly name: string;
  readonly told: string;
  readonly children: ComponentChildren;
}) {
  return (
    <details class="stage-part">
      <summary>
        <strong>{name}</strong> <span>{told}</span>
      </summary>
      {children}
    </details>
  );
}

import type { ComponentChildren } from "preact";

/** Fields that are set once and seldom touched. */
export function More({ children }: { readonly children: ComponentChildren }) {
  return (
    <details class="more">
      <summary>More</summary>
      <div class="fields">{children}</div>
    </details>
  );
}

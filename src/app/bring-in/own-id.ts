import { useId } from "preact/hooks";

/** An id within the dialog. It is drawn beside the page, in a tree of its own, whose ids would begin anew and meet the page's. */
export function useOwnId(): string {
  return `bring-in-${useId()}`;
}

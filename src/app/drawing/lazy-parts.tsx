import { lazily } from "../lazily.tsx";
import { useStore } from "../store-context.ts";

/** The list of drawn things, for the Ground step. */
export const DrawnList = lazily(async () => (await import("./drawn-list.tsx")).DrawnList);

const LoadedPanel = lazily(async () => (await import("./thing-panel.tsx")).ThingPanel);

/** The panel of what is selected or being drawn, above the steps. */
export function ThingPanel() {
  const { drawing } = useStore();
  return drawing.selected.value === null && drawing.tool.value === null ? null : <LoadedPanel />;
}

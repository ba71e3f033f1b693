import { DropTarget } from "./drop-target.tsx";
import { FirstScreen } from "./first-screen/first-screen.tsx";
import { useStore } from "./store-context.ts";
import { Workbench } from "./workbench.tsx";

/** The whole page: the first screen, or the map with the steps beside it. */
export function Page() {
  const store = useStore();
  return (
    <>
      {store.opened.value > 0 ? <Workbench /> : <FirstScreen />}
      <DropTarget />
    </>
  );
}

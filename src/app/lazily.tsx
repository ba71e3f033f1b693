import type { ComponentType } from "preact";
import { useEffect, useState } from "preact/hooks";

/** A component that is fetched when it is first shown; nothing stands in its place until then. */
export function lazily(load: () => Promise<ComponentType>): ComponentType {
  let fetched: ComponentType | null = null;
  return function Lazily() {
    const [Component, setComponent] = useState<{ readonly Shown: ComponentType } | null>(fetched && { Shown: fetched });
    useEffect(() => {
      if (Component) return;
      let isGone = false;
      load().then(
        (loaded) => {
          fetched = loaded;
          if (!isGone) setComponent({ Shown: loaded });
        },
        () => undefined,
      );
      return () => {
        isGone = true;
      };
    }, [Component]);
    return Component && <Component.Shown />;
  };
}

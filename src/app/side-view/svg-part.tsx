import { useLayoutEffect, useRef } from "preact/hooks";

/** A drawing that the core wrote as SVG text, as part of the page. */
export function SvgPart({ name, svg }: { readonly name: string; readonly svg: string }) {
  const room = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    const drawing = new DOMParser().parseFromString(svg, "image/svg+xml").documentElement;
    room.current?.replaceChildren(drawing);
  }, [svg]);
  return <div class={name} ref={room} />;
}

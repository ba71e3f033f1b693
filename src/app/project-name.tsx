import { useEffect, useRef, useState } from "preact/hooks";
import { text } from "../core/units.ts";
import { renameProject } from "./commands/rename-project.ts";
import { useStore } from "./store-context.ts";
import { words } from "./words.ts";

/** The project's name, which is a button to change it. */
export function ProjectName() {
  const store = useStore();
  const name = store.shownPlan.value?.project.name ?? words.title;
  const [typed, setTyped] = useState<string | null>(null);
  const [refusal, setRefusal] = useState<string | null>(null);
  const button = useRef<HTMLButtonElement>(null);
  const input = useRef<HTMLInputElement>(null);
  const isTyping = typed !== null;
  useEffect(() => {
    if (isTyping) input.current?.select();
  }, [isTyping]);

  useEffect(() => {
    document.title = `${name} · ${words.title}`;
    return () => {
      document.title = words.title;
    };
  }, [name]);

  const close = (): void => {
    const hadFocus = document.activeElement === input.current;
    setTyped(null);
    setRefusal(null);
    if (hadFocus) requestAnimationFrame(() => button.current?.focus());
  };
  const finish = (): void => {
    const first = typed === null ? undefined : renameProject(store, typed)[0];
    if (first) setRefusal(text(first.message, store.units.value));
    else close();
  };
  return (
    <h1 class="project-name">
      {typed === null ? (
        <button type="button" ref={button} title="Rename" onClick={() => setTyped(name)}>
          {name}
        </button>
      ) : (
        <>
          <input
            ref={input}
            type="text"
            aria-label="Name of the project"
            aria-invalid={refusal !== null}
            autocomplete="off"
            maxLength={200}
            value={typed}
            onInput={(event) => setTyped(event.currentTarget.value)}
            onBlur={finish}
            onKeyDown={(event) => {
              if (event.key === "Enter") finish();
              if (event.key === "Escape") {
                event.stopPropagation();
                close();
              }
            }}
          />
          {refusal && (
            <span class="field-refusal" role="alert">
              {refusal}
            </span>
          )}
        </>
      )}
    </h1>
  );
}

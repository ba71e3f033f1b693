import { bringIn } from "../commands/bring-in.ts";
import { KeepingBars } from "../keeping/keeping-bars.tsx";
import { ProjectList } from "../keeping/project-list.tsx";
import { RefusalNote } from "../refusal-note.tsx";
import { useStore } from "../store-context.ts";
import { words } from "../words.ts";
import { EmptyMap } from "./empty-map.tsx";
import { OpenOwnFile } from "./open-own-file.tsx";
import { SampleList } from "./sample-list.tsx";

/** What there is to begin with: one's own projects, a file, an empty map, or a sample. */
export function FirstScreen() {
  const store = useStore();
  const { list, hasLooked } = store.keeping;
  const hasOwn = (list.value?.length ?? 0) > 0;
  // It is not seen before it is whole: nothing is to move under the hand.
  return (
    <main class={hasLooked.value ? "welcome" : "welcome is-waiting"}>
      <div class={hasOwn ? "welcome-sheet has-own" : "welcome-sheet"}>
        <header>
          <h1>{words.title}</h1>
          <p class="claim">{words.claim}</p>
          <p>{words.welcome}</p>
        </header>
        <KeepingBars />
        <RefusalNote />
        {hasOwn && (
          <section class="own-projects">
            <h2>Your projects</h2>
            <ProjectList />
          </section>
        )}
        <section class="ways-in">
          <h2>{hasOwn ? "Begin another" : "Begin"}</h2>
          <EmptyMap />
          <OpenOwnFile />
          <button type="button" onClick={() => void bringIn(store, { kind: "corners" })}>
            {words.pasteCorners}
          </button>
          <p class="aside">{words.dropHint}</p>
        </section>
        <section class="sample-choice">
          <h2>{words.samplesTitle}</h2>
          <SampleList />
        </section>
      </div>
    </main>
  );
}

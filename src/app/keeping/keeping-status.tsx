import { useStore } from "../store-context.ts";

/** In a word or two whether what is on the page is kept. */
export function KeepingStatus() {
  const { keeping } = useStore();
  const { kind } = keeping.status.value;
  if (keeping.isReading.value) return <span class="keeping-status">Open in another tab</span>;
  return (
    <span class={`keeping-status is-${kind}`} title={longer[kind]}>
      {words[kind]}
    </span>
  );
}

const words = { untouched: "Unchanged", keeping: "Keeping…", kept: "Kept", "not-kept": "Not kept" } as const;

const longer = {
  untouched: "Kept in this browser from your first change on",
  keeping: "The last change is being kept",
  kept: "Every change is kept in this browser",
  "not-kept": "The last change is only in this page",
} as const;

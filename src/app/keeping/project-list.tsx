import { useState } from "preact/hooks";
import { useStore } from "../store-context.ts";
import { dateText } from "./date-text.ts";
import type { ProjectRecord } from "./records.ts";

interface ProjectListProps {
  readonly onChosen?: () => void;
}

/** The projects that are kept in this browser, newest change first; those that were deleted are folded away below. */
export function ProjectList({ onChosen }: ProjectListProps) {
  const { keeping } = useStore();
  const all = keeping.list.value ?? [];
  const [present, deleted] = [all.filter((each) => each.deleted === null), all.filter((each) => each.deleted !== null)];
  return (
    <>
      {present.length > 0 && (
        <ul class="project-list">
          {present.map((record) => (
            <li key={record.id}>
              <ProjectEntry record={record} {...(onChosen && { onChosen })} />
            </li>
          ))}
        </ul>
      )}
      {deleted.length > 0 && (
        <details class="deleted-projects">
          <summary>Deleted ({deleted.length})</summary>
          <ul class="project-list">
            {deleted.map((record) => (
              <li key={record.id}>
                <div class="project-open">
                  <Drawing record={record} />
                  <span class="kept-name">{record.name}</span>
                  <span class="project-date">deleted {dateText(record.deleted ?? 0)}</span>
                </div>
                <div class="project-actions">
                  <button
                    type="button"
                    class="quiet-button"
                    onClick={() => void keeping.keeper.value?.bringBack(record.id)}
                  >
                    Bring back<span class="unseen"> {record.name}</span>
                  </button>
                </div>
              </li>
            ))}
          </ul>
          <button type="button" class="quiet-button" onClick={() => void keeping.keeper.value?.empty()}>
            Empty: delete {deleted.length === 1 ? "it" : "them"} for good
          </button>
        </details>
      )}
    </>
  );
}

function ProjectEntry({ record, onChosen }: ProjectListProps & { readonly record: ProjectRecord }) {
  const { keeping } = useStore();
  const keeper = keeping.keeper.value;
  const [isNaming, setNaming] = useState(false);
  const isOnPage = keeping.id.value === record.id;
  const finish = (typed: string): void => {
    setNaming(false);
    void keeper?.rename(record.id, typed);
  };
  return (
    <>
      <button
        type="button"
        class="project-open"
        aria-current={isOnPage || undefined}
        onClick={() => {
          onChosen?.();
          void keeper?.open(record.id);
        }}
      >
        <Drawing record={record} />
        <span class="kept-name">{record.name}</span>
        <span class="project-date">
          {isOnPage && "on the page, "}
          {dateText(record.changed)}
        </span>
      </button>
      {isNaming ? (
        <form
          class="project-actions"
          onSubmit={(event) => {
            event.preventDefault();
            const typed = new FormData(event.currentTarget).get("name");
            finish(typeof typed === "string" ? typed : "");
          }}
        >
          <input
            name="name"
            aria-label={`New name of ${record.name}`}
            defaultValue={record.name}
            autocomplete="off"
            ref={focus}
            onKeyDown={(event) => {
              if (event.key !== "Escape") return;
              event.preventDefault();
              event.stopPropagation();
              setNaming(false);
            }}
          />
          <button type="submit" class="quiet-button">
            Rename
          </button>
        </form>
      ) : (
        <div class="project-actions">
          <button type="button" class="quiet-button" onClick={() => setNaming(true)}>
            Rename<span class="unseen"> {record.name}</span>
          </button>
          <button type="button" class="quiet-button" onClick={() => void keeper?.duplicate(record.id)}>
            Duplicate<span class="unseen"> {record.name}</span>
          </button>
          <button
            type="button"
            class="quiet-button"
            onClick={() => {
              if (isOnPage) onChosen?.();
              void keeper?.remove(record.id);
            }}
          >
            Delete<span class="unseen"> {record.name}</span>
          </button>
        </div>
      )}
    </>
  );
}

/** The field stands where the button was that asked for it. */
function focus(input: HTMLInputElement | null): void {
  input?.select();
}

function Drawing({ record }: { readonly record: ProjectRecord }) {
  return <img alt="" width="72" height="48" src={`data:image/svg+xml,${encodeURIComponent(record.thumbnail)}`} />;
}

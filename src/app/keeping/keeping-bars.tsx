import { useStore } from "../store-context.ts";
import { MessageBar } from "./message-bar.tsx";
import { ReadingBar } from "./reading-bar.tsx";
import { UnreadableBar } from "./unreadable-bar.tsx";

/** What the keeping of projects has to say, under the top bar; nothing while all is well. */
export function KeepingBars() {
  return (
    <div class="keeping-bars">
      <ReadingBar />
      <FailureBar />
      <LeftBar />
      <UnreadableBar />
      <MessageBar />
    </div>
  );
}

function FailureBar() {
  const { keeping } = useStore();
  const status = keeping.status.value;
  const keeper = keeping.keeper.value;
  if (status.kind !== "not-kept") return null;
  const { what, remedy } = status.failure;
  return (
    <div class="keeping-bar is-failure" role="alert">
      <p>
        <strong>Not kept: {what}.</strong> {remedy}
      </p>
      {keeper && (
        <>
          <button type="button" class="strong-button" onClick={() => void keeper.saveAs()}>
            Save as a file now
          </button>
          <button type="button" onClick={() => keeper.retry()}>
            Try again
          </button>
        </>
      )}
    </div>
  );
}

function LeftBar() {
  const { keeping } = useStore();
  return (
    <>
      {keeping.left.value.map((name) => (
        <div class="keeping-bar is-failure" role="alert" key={name}>
          <p>
            <strong>“{name}” was left before it could be kept.</strong> It is still in this page.
          </p>
          <button type="button" class="strong-button" onClick={() => keeping.keeper.value?.backTo(name)}>
            Back to it
          </button>
          <button type="button" onClick={() => keeping.keeper.value?.retry()}>
            Try again
          </button>
        </div>
      ))}
    </>
  );
}

import { useStore } from "../store-context.ts";

/** What there is to be told once: a refused edit, a file that was saved, a project that was deleted. It stays until it is closed. */
export function MessageBar() {
  const { message: told } = useStore().keeping;
  const message = told.value;
  return (
    <div class="message-place" role="status">
      {message && (
        <div class="keeping-bar">
          <p>{message.text}</p>
          {message.actions.map(({ label, run }) => (
            <button
              key={label}
              type="button"
              onClick={() => {
                told.value = null;
                run();
              }}
            >
              {label}
            </button>
          ))}
          <button
            type="button"
            class="quiet-button"
            onClick={() => {
              told.value = null;
            }}
          >
            Close<span class="unseen"> this message</span>
          </button>
        </div>
      )}
    </div>
  );
}

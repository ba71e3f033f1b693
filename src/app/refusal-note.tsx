import { text } from "../core/units.ts";
import { useStore } from "./store-context.ts";
import { words } from "./words.ts";

/** Why a file was not opened; what was open is still there. */
export function RefusalNote() {
  const store = useStore();
  const refusal = store.refusal.value;
  if (!refusal) return null;
  const units = store.units.value;
  const errors = refusal.findings.filter(({ severity }) => severity === "error");
  const told = (errors.length > 0 ? errors : refusal.findings).slice(0, 4);
  return (
    <div class="refusal" role="alert">
      <p>
        <strong>{refusal.file} was not opened.</strong> {store.opened.value > 0 ? words.stays : ""}
      </p>
      <ul>
        {told.map((finding, i) => (
          <li key={`${finding.code} ${i}`}>
            {text(finding.message, units)} {text(finding.remedy, units)}
          </li>
        ))}
      </ul>
      <button
        type="button"
        class="quiet-button"
        onClick={() => {
          store.refusal.value = null;
        }}
      >
        {words.close}
      </button>
    </div>
  );
}

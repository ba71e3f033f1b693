import { useRef } from "preact/hooks";
import { openFile } from "./commands/open-file.ts";
import { openSample } from "./commands/open-sample.ts";
import { samples } from "./samples.ts";
import { useStore } from "./store-context.ts";
import { words } from "./words.ts";

interface OpenChoicesProps {
  /** Level of the heading over the samples, one below what stands above. */
  readonly heading: "h2" | "h3";
  readonly onChosen?: () => void;
}

/** A file of one's own or one of the samples. */
export function OpenChoices({ heading, onChosen }: OpenChoicesProps) {
  const Heading = heading;
  const store = useStore();
  const input = useRef<HTMLInputElement>(null);
  return (
    <div class="open-choices">
      <button type="button" class="strong-button" onClick={() => input.current?.click()}>
        {words.openOwn}
      </button>
      <p class="aside">{words.dropHint}</p>
      <input
        ref={input}
        type="file"
        hidden
        accept=".geojson,.json,application/geo+json,application/json"
        onChange={(event) => {
          const file = event.currentTarget.files?.[0];
          event.currentTarget.value = "";
          if (!file) return;
          onChosen?.();
          void openFile(store, file);
        }}
      />
      <Heading>{words.samplesTitle}</Heading>
      <p class="aside">{words.samplesNote}</p>
      <ul class="sample-list">
        {samples.map((sample) => (
          <li key={sample.name}>
            <button
              type="button"
              onClick={() => {
                onChosen?.();
                void openSample(store, sample.name, new URL(location.href));
              }}
            >
              <strong>{sample.title}</strong>
              <span>{sample.about}</span>
            </button>
          </li>
        ))}
      </ul>
    </div>
  );
}

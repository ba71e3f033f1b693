import { openSample } from "../commands/open-sample.ts";
import { samples } from "../samples.ts";
import { useStore } from "../store-context.ts";
import { words } from "../words.ts";

interface SampleListProps {
  readonly onChosen?: () => void;
}

/** The samples that come with the page, each with a line about it. */
export function SampleList({ onChosen }: SampleListProps) {
  const store = useStore();
  return (
    <>
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
    </>
  );
}

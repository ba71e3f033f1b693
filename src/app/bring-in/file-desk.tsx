import { useEffect, useMemo } from "preact/hooks";
import { Sentences } from "./bring-in-sentences.tsx";
import type { DeskProps } from "./desk-props.ts";
import { FileReading } from "./file-reading.ts";
import { FoundPreview } from "./found-preview.tsx";
import { QuestionForm } from "./question-form.tsx";
import { startFileWorker } from "./start-file-worker.ts";

/** A file while it is read, what it leaves open, and what it holds. */
export function FileDesk({
  file,
  units,
  onTake,
  onClose,
}: DeskProps & { readonly file: Blob & { readonly name: string } }) {
  const reading = useMemo(() => new FileReading(startFileWorker), []);
  // A worker is told the name of a file, not that of a blob.
  const whole = useMemo(() => (file instanceof File ? file : new File([file], file.name)), [file]);
  // The units only word the sentences: the file is not read again for them.
  useEffect(() => {
    reading.read(whole, units);
    return reading.stop;
  }, [reading, whole]);
  const state = reading.state.value;
  switch (state.kind) {
    case "none":
      return null;
    case "reading":
      return (
        <div class="bring-in-progress" role="status">
          <label>
            Reading {file.name}
            {/* Without a value it says only that something goes on. */}
            <progress value={state.share_ratio > 0 ? state.share_ratio : undefined} max={1} />
          </label>
          <button type="button" onClick={onClose}>
            Stop
          </button>
        </div>
      );
    case "refused":
      return (
        <>
          <Sentences
            sentences={[`${file.name} was not taken in; what is open is as it was.`, ...state.sentences]}
            isRefused
          />
          <div class="bring-in-foot">
            <button type="button" onClick={onClose}>
              Close
            </button>
          </div>
        </>
      );
    case "found": {
      const { format, system, features, questions } = state.found;
      const isOpen = questions.length > 0;
      return (
        <>
          <p class="aside">
            {format}
            {isOpen ? "" : `, read as ${system}`}
          </p>
          <Sentences sentences={state.sentences} />
          {isOpen ? (
            <>
              <QuestionForm
                key={questions.map(({ about }) => about).join()}
                questions={questions}
                answers={reading.answers.value}
                units={units}
                onAnswer={(answers) => reading.read(whole, units, answers)}
              />
              <div class="bring-in-foot">
                <button type="button" onClick={onClose}>
                  Cancel
                </button>
              </div>
            </>
          ) : (
            <FoundPreview
              features={features}
              units={units}
              onTake={(chosen) => onTake(chosen, file.name)}
              onCancel={onClose}
            />
          )}
        </>
      );
    }
    default:
      return state satisfies never;
  }
}

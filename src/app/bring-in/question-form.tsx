import { useState } from "preact/hooks";
import { text, type UnitSystem } from "../../core/units.ts";
import type { Question, ReadingAnswers } from "../../readers/reading.ts";
import { useOwnId } from "./own-id.ts";

interface QuestionFormProps {
  readonly questions: readonly Question[];
  readonly answers: ReadingAnswers;
  readonly units: UnitSystem;
  readonly onAnswer: (answers: ReadingAnswers) => void;
}

/** What a file leaves open, to be answered by whoever knows: nothing of it is guessed. */
export function QuestionForm({ questions, answers, units, onAnswer }: QuestionFormProps) {
  const [given, setGiven] = useState<ReadonlyMap<Question["about"], string>>(new Map());
  const isWhole = questions.every(({ about }) => (given.get(about) ?? "").trim() !== "");
  return (
    <form
      class="question-form"
      onSubmit={(event) => {
        event.preventDefault();
        if (isWhole) onAnswer([...given].reduce(withAnswer, answers));
      }}
    >
      {questions.map((question) => (
        <QuestionField
          key={question.about}
          question={question}
          value={given.get(question.about) ?? ""}
          units={units}
          onValue={(value) => setGiven(new Map(given).set(question.about, value))}
        />
      ))}
      <button type="submit" class="strong-button" disabled={!isWhole}>
        Read it so
      </button>
    </form>
  );
}

interface QuestionFieldProps {
  readonly question: Question;
  readonly value: string;
  readonly units: UnitSystem;
  readonly onValue: (value: string) => void;
}

function QuestionField({ question: { about, asked, offered }, value, units, onValue }: QuestionFieldProps) {
  const id = useOwnId();
  // A coordinate system, and the north of a compass, may be another than the offered ones.
  const isTyped = offered.length === 0 || about === "system" || about === "north";
  return (
    <fieldset class="question">
      <legend>{text(asked, units)}</legend>
      {offered.map((each) => (
        <label key={each.value}>
          <input type="radio" name={id} checked={value === each.value} onChange={() => onValue(each.value)} />
          <span>{text(each.told, units)}</span>
        </label>
      ))}
      {isTyped && (
        <label class="question-typed">
          <span>
            {about === "north"
              ? "Degrees east of true north"
              : offered.length === 0
                ? "Coordinate system"
                : "Another one"}
          </span>
          <input
            type="text"
            autocomplete="off"
            spellcheck={false}
            placeholder={about === "north" ? "13.5, or -11.2 for west" : "EPSG:26910"}
            value={offered.some((each) => each.value === value) ? "" : value}
            onInput={(event) => onValue(event.currentTarget.value)}
          />
        </label>
      )}
    </fieldset>
  );
}

/** The answers with one more. */
export function withAnswer(
  answers: ReadingAnswers,
  [about, value]: readonly [Question["about"], string],
): ReadingAnswers {
  switch (about) {
    case "system":
      return { ...answers, system: value.trim() };
    case "unit":
      return { ...answers, unit: (["m", "ft", "us-ft"] as const).find((each) => each === value) ?? null };
    case "order":
      return { ...answers, isSwapped: /^(?:swapped|yes|true)$/.test(value) };
    case "north":
      return { ...answers, north: value.trim() };
    default:
      return about satisfies never;
  }
}

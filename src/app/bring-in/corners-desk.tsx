import { useEffect, useState } from "preact/hooks";
import { parsePlace } from "../../core/drawing/place.ts";
import type { Finding } from "../../core/finding.ts";
import { formatQuantity, text, type UnitSystem } from "../../core/units.ts";
import type { CornerList } from "../../readers/corners/read-corner-list.ts";
import { noAnswers, type ReadingAnswers } from "../../readers/reading.ts";
import { grouped } from "../strip/count.ts";
import { Sentences } from "./bring-in-sentences.tsx";
import type { DeskProps } from "./desk-props.ts";
import { FoundPreview } from "./found-preview.tsx";
import { useOwnId } from "./own-id.ts";
import { QuestionForm } from "./question-form.tsx";

interface Reading {
  readonly list: CornerList | null;
  readonly findings: readonly Finding[];
}

/** While someone types, the list is read this long after the last letter. */
const pause_ms = 150;

/** Corners pasted or typed, read as they stand: what they come to is drawn at once, and what a line is not understood for is said. */
export function CornersDesk({ units, onTake, onClose }: DeskProps) {
  const [pasted, setPasted] = useState("");
  const [begin, setBegin] = useState("");
  const [answers, setAnswers] = useState(noAnswers);
  const reading = useReading(pasted, answers, begin);
  const [id, beginId] = [useOwnId(), useOwnId()];
  const list = reading.list;
  const needsBegin =
    list?.closure != null || begin !== "" || reading.findings.some(({ code }) => code === "readers/no-beginning");
  return (
    <>
      <div class="corners-in">
        <label for={id}>One corner a line, or a boundary told by bearings and distances</label>
        <textarea
          id={id}
          rows={5}
          spellcheck={false}
          placeholder={
            "38.29140, -122.45800\n38°17'29.0\"N 122°27'28.8\"W\n10N 547321.4 4238115.9\nN 45°30'15\" E 250.00 ft"
          }
          value={pasted}
          onInput={({ currentTarget: { value } }) => {
            setPasted(value);
            setAnswers(noAnswers);
          }}
        />
        {needsBegin && (
          <div class="corners-begin">
            <label for={beginId}>First corner, latitude first</label>
            <input
              id={beginId}
              type="text"
              autocomplete="off"
              placeholder="38.2914, -122.4580"
              value={begin}
              onInput={({ currentTarget: { value } }) => setBegin(value)}
            />
          </div>
        )}
        {list && (
          <p class="aside" role="status">
            Read as {list.notation}
            {list.questions.length > 0 || list.closure ? "" : `, ${list.system}`}.
            {list.closure && ` ${closureTold(list.closure, units)}`}
          </p>
        )}
        <Sentences
          sentences={reading.findings.map(({ message, remedy }) => `${text(message, units)} ${text(remedy, units)}`)}
        />
        {list && list.questions.length > 0 && (
          <QuestionForm
            key={list.questions.map(({ about }) => about).join()}
            questions={list.questions}
            answers={answers}
            units={units}
            onAnswer={setAnswers}
          />
        )}
      </div>
      {list && list.questions.length === 0 && list.features.length > 0 ? (
        <FoundPreview
          features={list.features}
          units={units}
          onTake={(chosen) => onTake(chosen, "a list of corners")}
          onCancel={onClose}
        />
      ) : (
        <div class="bring-in-foot">
          <button type="button" onClick={onClose}>
            Cancel
          </button>
        </div>
      )}
    </>
  );
}

/** What the text comes to; the reader is fetched with the first letter. */
function useReading(pasted: string, answers: ReadingAnswers, begin: string): Reading {
  const [reading, setReading] = useState<Reading>({ list: null, findings: [] });
  useEffect(() => {
    let isGone = false;
    const read = async (): Promise<void> => {
      const { readCornerList } = await import("../../readers/corners/read-corner-list.ts");
      if (isGone) return;
      const place = begin.trim() === "" ? null : parsePlace(begin);
      const outcome = readCornerList(pasted, answers, place?.ok ? place.at : null);
      setReading({ list: outcome.ok ? outcome.value : null, findings: outcome.findings });
    };
    const timer = setTimeout(() => {
      if (pasted.trim() === "") setReading({ list: null, findings: [] });
      else void read();
    }, pause_ms);
    return () => {
      isGone = true;
      clearTimeout(timer);
    };
  }, [pasted, answers, begin]);
  return reading;
}

/** "It misses its beginning by 0.12 m (0.10 m east, 0.06 m south) over 402 m: 1 in 3,350." */
function closureTold(
  { east_m, north_m, error_m, length_m, ratio }: NonNullable<CornerList["closure"]>,
  units: UnitSystem,
): string {
  const length = (value_m: number): string => formatQuantity("length", Math.abs(value_m), units);
  if (ratio === null) return `It comes back to its beginning exactly, after ${length(length_m)}.`;
  const ways = `${length(east_m)} ${east_m < 0 ? "west" : "east"}, ${length(north_m)} ${north_m < 0 ? "south" : "north"}`;
  return `The end misses the beginning by ${length(error_m)} (${ways}) over ${length(length_m)}: 1 in ${grouped(ratio)}.`;
}

import "./hand-over.css";
import { useEffect, useMemo } from "preact/hooks";
import { formatNamed } from "../../core/exchange/formats.ts";
import { layerKinds } from "../../core/exchange/layers/layer.ts";
import type { Plan } from "../../core/plan.ts";
import { serializeProject } from "../../core/project/serialize.ts";
import { download, fileStem } from "../download.ts";
import { useStore } from "../store-context.ts";
import { Note } from "../strip/notes.tsx";
import { notBesideFields } from "./beside-fields.ts";
import { choiceFor } from "./choice-for.ts";
import { FormatChoice } from "./format-choice.tsx";
import { handOverChoicesOf } from "./hand-over-choices.ts";
import { NamingChoice } from "./naming-choice.tsx";
import { outgoingFeatures, outgoingOf } from "./outgoing.ts";
import { PlaceChoice } from "./place-choice.tsx";
import { PreviewPart } from "./preview-part.tsx";
import { RowsChoice } from "./rows-choice.tsx";
import { ThingChoice } from "./thing-choice.tsx";
import { countedThings } from "./things.ts";
import { usePreview } from "./use-preview.ts";
import { WritePart } from "./write-part.tsx";

/** Everything of the Hand over step: the project file, and the plan in open formats, seen before it is written. */
export function HandOverDesk() {
  const plan = useStore().shownPlan.value;
  if (!plan) return null;
  const { project } = plan;
  const file = `${fileStem(project.name)}.geojson`;
  return (
    <div class="hand-over">
      {project.parcels.some(({ outline }) => outline === "walked") && (
        <p class="sketch-caution">
          An outline here was walked with a phone: a sketch, metres off. Good for planning; do not stake from it.
        </p>
      )}
      <ul class="exports">
        <li>
          <button type="button" onClick={() => download(file, serializeProject(project), "application/geo+json")}>
            Save the project
          </button>
          <span>{file}, opens again here and in any GIS</span>
        </li>
      </ul>
      {plan.ground !== null && <PlanFiles plan={plan} />}
    </div>
  );
}

function PlanFiles({ plan }: { readonly plan: Plan }) {
  const store = useStore();
  const choices = handOverChoicesOf(store);
  const things = useMemo(() => countedThings(plan), [plan]);
  const choice = choiceFor(choices, plan, things);
  const format = formatNamed(choice.as);
  const preview = usePreview(plan, choice);
  const hasPlaces = layerKinds.some((kind) => choice.of.includes(kind));
  useEffect(() => {
    const outgoing = outgoingOf(store);
    outgoing.value = outgoingFeatures(preview.handed?.layers ?? []);
    return () => {
      outgoing.value = [];
    };
  }, [store, preview.handed]);
  const findings = notBesideFields(preview.findings);
  return (
    <>
      <h3>The plan in an open format</h3>
      <FormatChoice />
      <ThingChoice things={things} />
      <div class="fields">
        <RowsChoice plan={plan} choice={choice} />
        {hasPlaces && <NamingChoice plan={plan} format={format} choice={choice} />}
        {hasPlaces && <PlaceChoice plan={plan} format={format} choice={choice} />}
      </div>
      <PreviewPart preview={preview} />
      {findings.length > 0 && (
        <ul class="notes" aria-label="What there is to know about these files">
          {findings.map((finding, i) => (
            <Note key={`${finding.code} ${i}`} finding={finding} />
          ))}
        </ul>
      )}
      <WritePart choice={choice} preview={preview} hindrance={hindranceOf(choice.of.length, preview)} />
    </>
  );
}

function hindranceOf(things: number, { findings, handed, isOld }: ReturnType<typeof usePreview>): string | null {
  if (things === 0) return "Tick what is to go out.";
  if (handed === null && findings.length > 0 && !isOld) return "What is named above keeps it from being written.";
  if (handed !== null && handed.files.length === 0 && !isOld) return "Of what is ticked there is nothing to write.";
  return null;
}

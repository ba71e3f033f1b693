import { useEffect, useState } from "preact/hooks";
import type { HandOverChoice } from "../../core/exchange/choice.ts";
import { type HandOver, handingOver } from "../../core/exchange/hand-over.ts";
import type { Finding } from "../../core/finding.ts";
import type { Plan } from "../../core/plan.ts";
import { inTurns, pageTurns } from "./in-turns.ts";
import { type PreviewTable, previewTables } from "./preview.ts";

/** What a choice comes to, before anything is written. */
export interface Preview {
  readonly handed: HandOver | null;
  readonly tables: readonly PreviewTable[];
  readonly findings: readonly Finding[];
  /** True while what is shown is of an earlier choice. */
  readonly isOld: boolean;
}

/** Typing goes on this long before what it comes to is looked at. */
const pause_ms = 150;

/** The preview of a plan by a choice; it follows a moment later. */
export function usePreview(plan: Plan, choice: HandOverChoice): Preview {
  const [seen, setSeen] = useState<Seen>({ plan: null, asked: "", handed: null, tables: [], findings: [] });
  // A choice is plain data, made anew whenever the step is drawn.
  const asked = JSON.stringify(choice);
  useEffect(() => {
    const control = new AbortController();
    const timer = setTimeout(
      () => {
        look(plan, choice, asked, control.signal).then(
          (next) => {
            if (next !== null) setSeen(next);
          },
          (problem: unknown) => console.error(problem),
        );
      },
      seen.plan === null ? 0 : pause_ms,
    );
    return () => {
      clearTimeout(timer);
      control.abort();
    };
  }, [plan, asked]);
  const { handed, tables, findings } = seen;
  return { handed, tables, findings, isOld: seen.plan !== plan || seen.asked !== asked };
}

interface Seen extends Omit<Preview, "isOld"> {
  readonly plan: Plan | null;
  readonly asked: string;
}

/** Null when something else was asked for meanwhile. */
async function look(plan: Plan, choice: HandOverChoice, asked: string, signal: AbortSignal): Promise<Seen | null> {
  const handed = await inTurns(handingOver(plan, choice, new Date().toISOString()), pageTurns(signal));
  if (handed === null) return null;
  const { result } = handed;
  if (!result.ok) return { plan, asked, handed: null, tables: [], findings: result.findings };
  return { plan, asked, handed: result.value, tables: previewTables(result.value), findings: result.value.findings };
}

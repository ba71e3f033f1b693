import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "@playwright/test";
import type { Browser } from "../../support/browser.ts";
import { between, createRandom, type Random, wholeBetween } from "../../support/random.ts";
import { startBrowserToKill } from "./browser-to-kill.ts";

/** No edit older than this may be lost. */
const allowed_ms = 1000;

interface State {
  /** When it came about, milliseconds since 1970. */
  readonly at: number;
  readonly text: string;
}

export interface KillReport {
  readonly runs: number;
  readonly edits: number;
  /** Runs after which the state was the very last one. */
  readonly nothingLost: number;
  /** Longest time before the kill from which on edits were lost. */
  readonly oldestLost_ms: number;
  readonly faults: readonly string[];
}

/**
 * Edits a kept project through the page, kills the browser with all its processes at a random moment, starts it again on the same profile
 * and looks what is there, as often as asked: it must be readable, and a state that was current no more than a second before the kill.
 */
export async function killAndReopen(found: Browser, page: string, runs: number, seed: number): Promise<KillReport> {
  const profile = await mkdtemp(join(tmpdir(), "tautrow-soak-"));
  const faults: string[] = [];
  let [edits, nothingLost, oldestLost_ms] = [0, 0, 0];
  let address = `${page}/?bench&sample=acre-with-notch`;
  let before: { readonly states: readonly State[]; readonly killed: number } | null = null;
  try {
    // One more than there are kills: the last one only looks.
    for (let run = 0; run <= runs; run++) {
      const random = createRandom(seed + run);
      const browser = await startBrowserToKill(found, profile);
      const states: State[] = [];
      try {
        const tab = browser.context.pages()[0] ?? (await browser.context.newPage());
        await tab.exposeFunction("tautrowState", (at: number, text: string) => states.push({ at, text }));
        await tab.goto(address);
        await tab.getByLabel("Row spacing", { exact: true }).waitFor({ timeout: 20_000 });
        const reopened = states[0]?.text;
        if (before) {
          const lost = lostAfter(before, reopened);
          if (lost.fault !== null) faults.push(`run ${run}, seed ${seed + run - 1}: ${lost.fault}`);
          if (lost.lost_ms === 0) nothingLost++;
          oldestLost_ms = Math.max(oldestLost_ms, lost.lost_ms);
        }
        if (run < runs) {
          if (run === 0) await keepFirst(tab);
          address = tab.url();
          const editing = editUntilDead(tab, random);
          await tab.waitForTimeout(between(random, 200, 3500));
          const killed = await browser.kill();
          edits += await editing;
          before = { states, killed };
        }
      } finally {
        await browser.kill();
      }
    }
  } catch (error) {
    faults.push(`it ended early: ${error instanceof Error ? error.message : String(error)}`);
  } finally {
    await rm(profile, { recursive: true, force: true });
  }
  return { runs, edits, nothingLost, oldestLost_ms, faults };
}

/** What of the states before a kill was lost in what was found afterwards. */
export function lostAfter(
  { states, killed }: { readonly states: readonly State[]; readonly killed: number },
  reopened: string | undefined,
): { readonly fault: string | null; readonly lost_ms: number } {
  if (reopened === undefined) return { fault: "the project is not readable", lost_ms: 0 };
  const last = states.findLastIndex(({ text }) => text === reopened);
  if (last < 0) return { fault: "the project is in a state that never was", lost_ms: 0 };
  const next = states[last + 1];
  if (!next) return { fault: null, lost_ms: 0 };
  const lost_ms = killed - next.at;
  const fault = lost_ms > allowed_ms ? `an edit made ${lost_ms} ms before the kill is lost` : null;
  return { fault, lost_ms };
}

async function keepFirst(tab: Page): Promise<void> {
  await tab.getByLabel("Row spacing", { exact: true }).fill("9 ft");
  await tab.waitForURL(/#project=/, { timeout: 10_000 });
}

/** Makes one edit after another, as a person would, until the browser is gone; how many. */
async function editUntilDead(tab: Page, random: Random): Promise<number> {
  let made = 0;
  try {
    for (;;) {
      await editOnce(tab, random);
      made++;
      await tab.waitForTimeout(between(random, 0, 220));
    }
  } catch {
    return made;
  }
}

async function editOnce(tab: Page, random: Random): Promise<void> {
  const kind = wholeBetween(random, 0, 9);
  const field = (label: string, low: number, high: number): Promise<void> =>
    tab.getByLabel(label, { exact: true }).fill(`${between(random, low, high).toFixed(2)} ft`, { timeout: 4000 });
  if (kind <= 2) await field("Row spacing", 6, 12);
  else if (kind <= 4) await field("Vine spacing", 4, 8);
  else if (kind === 5) await field("Headland", 10, 30);
  else if (kind <= 7) {
    const handle = tab.getByRole("slider", { name: /^Bearing of the rows, (?!on the chart)/ });
    await handle.press(random() < 0.5 ? "ArrowLeft" : "ArrowRight", { timeout: 4000 });
  } else
    await tab
      .getByRole("button", { name: kind === 8 ? /^Undo: / : /^Redo: / })
      .click({ timeout: 300 })
      .catch(unlessDead(tab));
}

/** There was nothing to undo or redo; a page that is gone is another matter. */
function unlessDead(tab: Page): (error: unknown) => void {
  return (error) => {
    if (tab.isClosed()) throw error;
  };
}

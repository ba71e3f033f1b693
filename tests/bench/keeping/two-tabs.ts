import { type BrowserContext, chromium, type Page } from "@playwright/test";
import type { Browser } from "../../support/browser.ts";
import { between, createRandom, type Random, wholeBetween } from "../../support/random.ts";

export interface TabsReport {
  readonly runs: number;
  /** Edits that a tab accepted, and that it refused because the other one was writing. */
  readonly accepted: number;
  readonly refused: number;
  /** Projects that came about as copies. */
  readonly copies: number;
  readonly faults: readonly string[];
}

/**
 * Opens one project in two tabs and edits it in both by turns at random, with taking over, copies and reloads in between, as often as
 * asked: every edit that was accepted must be found afterwards in one of the kept projects. Every other run is in a browser without
 * locks and without messages between tabs, where only the revision tells.
 */
export async function editInTwoTabs(found: Browser, page: string, runs: number, seed: number): Promise<TabsReport> {
  const browser = await chromium.launch({
    executablePath: found.executablePath,
    args: [...found.args],
    env: { ...found.env },
  });
  const faults: string[] = [];
  let [accepted, refused, copies] = [0, 0, 0];
  try {
    for (let run = 0; run < runs; run++) {
      // A small window: what is drawn is not the question here.
      const context = await browser.newContext({ viewport: { width: 640, height: 480 } });
      try {
        const told = await oneRun(context, page, createRandom(seed + run), run % 2 === 1);
        accepted += told.accepted.length;
        refused += told.refused;
        copies += told.texts.length - 1;
        const lost = told.accepted.filter((mark) => !told.texts.some((text) => text.includes(`"id":"${mark}"`)));
        if (lost.length > 0) faults.push(`run ${run}, seed ${seed + run}: ${lost.join(", ")} written over`);
      } catch (error) {
        faults.push(`run ${run}, seed ${seed + run}: ${error instanceof Error ? error.message : String(error)}`);
      } finally {
        await context.close();
      }
    }
  } finally {
    await browser.close();
  }
  return { runs, accepted, refused, copies, faults };
}

async function oneRun(
  context: BrowserContext,
  page: string,
  random: Random,
  isBare: boolean,
): Promise<{ accepted: string[]; refused: number; texts: readonly string[] }> {
  if (isBare) {
    await context.addInitScript(() => {
      Object.defineProperty(Navigator.prototype, "locks", { value: undefined });
      Object.defineProperty(window, "BroadcastChannel", { value: undefined });
    });
  }
  const accepted: string[] = [];
  let refused = 0;
  const mark = async (tab: Page, name: string): Promise<void> => {
    if (await tab.evaluate((wanted) => window.tautrowMark?.(wanted) ?? false, name)) accepted.push(name);
    else refused++;
  };
  const first = await context.newPage();
  await first.goto(`${page}/?bench&sample=crooked-strip`);
  await ready(first);
  await mark(first, "mark-0");
  await first.waitForURL(/#project=/, { timeout: 10_000 });
  const second = await context.newPage();
  await second.goto(first.url());
  await ready(second);
  const tabs = [first, second];
  const actions = wholeBetween(random, 8, 12);
  for (let i = 1; i <= actions; i++) {
    const tab = tabs[wholeBetween(random, 0, 1)] ?? first;
    const kind = random();
    if (kind < 0.12) await press(tab, "Work here instead");
    else if (kind < 0.17) await press(tab, "Make a copy");
    else if (kind < 0.23) {
      // What is lost by going away before that is another matter: see the kills.
      await kept(tab);
      await tab.reload();
      await ready(tab);
    } else await mark(tab, `mark-${i}`);
    if (random() < 0.6) await tab.waitForTimeout(between(random, 0, 500));
  }
  for (const tab of tabs) await kept(tab);
  return { accepted, refused, texts: await keptTexts(first) };
}

async function ready(tab: Page): Promise<void> {
  await tab.getByLabel("Row spacing", { exact: true }).waitFor({ timeout: 20_000 });
}

/** Waits until the tab says that all is kept, or that another one keeps it. */
async function kept(tab: Page): Promise<void> {
  await tab.locator(".keeping-status", { hasText: /^(Kept|Open in another tab)$/ }).waitFor({ timeout: 15_000 });
}

/** Presses a button if the tab has it at present. */
async function press(tab: Page, name: string): Promise<void> {
  const button = tab.getByRole("button", { name });
  if (await button.isEnabled({ timeout: 50 }).catch(() => false))
    await button.click({ timeout: 500 }).catch(() => undefined);
}

/** The newest text of every kept project. */
async function keptTexts(tab: Page): Promise<readonly string[]> {
  const texts = await tab.evaluate(() => window.tautrowKept?.() ?? []);
  return texts.map((text) => JSON.stringify(JSON.parse(text)));
}

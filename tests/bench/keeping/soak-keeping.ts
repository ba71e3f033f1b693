import { findBrowser } from "../../support/browser.ts";
import { killAndReopen } from "./kill-and-reopen.ts";
import { servePage } from "./served-page.ts";
import { editInTwoTabs } from "./two-tabs.ts";

/** Kills the browser and edits in two tabs as often as asked, and says what became of it; the number of checks that failed. */
export async function soakKeeping(kills: number, tabRuns: number, seed: number): Promise<number> {
  const { browser, reason } = await findBrowser();
  if (!browser) throw new Error(`no browser starts: ${reason}`);
  const page = await servePage();
  try {
    const kill = await killAndReopen(browser, page.address, kills, seed);
    tell(
      "killed and opened again",
      `${kill.runs} runs from seed ${seed}, ${kill.edits} edits; in ${kill.nothingLost} nothing was lost, else edits up to ${kill.oldestLost_ms} ms old`,
      kill.faults,
    );
    const tabs = await editInTwoTabs(browser, page.address, tabRuns, seed);
    tell(
      "two tabs on one project",
      `${tabs.runs} runs from seed ${seed}, ${tabs.accepted} edits accepted, ${tabs.refused} refused, ${tabs.copies} copies`,
      tabs.faults,
    );
    return Number(kill.faults.length > 0) + Number(tabs.faults.length > 0);
  } finally {
    page.stop();
  }
}

function tell(what: string, how: string, faults: readonly string[]): void {
  console.log(`${faults.length === 0 ? "ok  " : "FAIL"} ${what}: ${how}`);
  for (const fault of faults) console.log(`     ${fault}`);
}

import { type ChildProcess, spawn } from "node:child_process";
import { rm } from "node:fs/promises";
import { join } from "node:path";
import { type BrowserContext, chromium } from "@playwright/test";
import type { Browser } from "../../support/browser.ts";

/** A browser of its own process group, on a profile that outlives it. */
export interface BrowserToKill {
  readonly context: BrowserContext;
  /** Ends every process of it at once, as a power cut to the program would; the time just before, milliseconds since 1970. */
  kill(): Promise<number>;
}

const startLimit_ms = 30_000;

/** Starts it on a profile folder; what was kept there before is there again. */
export async function startBrowserToKill(found: Browser, profile: string): Promise<BrowserToKill> {
  // It says where it listens, and who had the profile before is known to be dead.
  await rm(join(profile, "DevToolsActivePort"), { force: true });
  await rm(join(profile, "SingletonLock"), { force: true });
  const started = spawn(
    found.executablePath,
    [
      ...found.args,
      "--headless=new",
      "--remote-debugging-port=0",
      `--user-data-dir=${profile}`,
      "--no-first-run",
      "--hide-crash-restore-bubble",
      // What is drawn is not the question here.
      "--window-size=640,480",
      "about:blank",
    ],
    { detached: true, stdio: ["ignore", "ignore", "pipe"], env: { ...found.env } },
  );
  const kill = async (): Promise<number> => {
    const gone = new Promise((resolve) => started.once("exit", resolve));
    const at = Date.now();
    if (started.pid !== undefined && started.exitCode === null && started.signalCode === null) {
      process.kill(-started.pid, "SIGKILL");
      await gone;
    }
    return at;
  };
  try {
    const browser = await chromium.connectOverCDP(await addressOf(started));
    const [context] = browser.contexts();
    if (!context) throw new Error("the browser has no window");
    return { context, kill };
  } catch (error) {
    await kill();
    throw error;
  }
}

/** Where it listens to be driven, which it writes to its error output. */
function addressOf(started: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let said = "";
    const timer = setTimeout(() => reject(new Error(`the browser did not start: ${said.slice(-500)}`)), startLimit_ms);
    started.stderr?.on("data", (chunk: Buffer) => {
      said += chunk.toString();
      const found = /DevTools listening on (ws:\S+)/.exec(said)?.[1];
      if (found === undefined) return;
      clearTimeout(timer);
      resolve(found);
    });
    started.once("exit", () => reject(new Error(`the browser ended: ${said.slice(-500)}`)));
  });
}

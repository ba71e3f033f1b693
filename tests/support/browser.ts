import { spawn } from "node:child_process";
import { createReadStream, existsSync, readFileSync } from "node:fs";
import { mkdir, rename, rm } from "node:fs/promises";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { createBrotliDecompress } from "node:zlib";
import { chromium } from "@playwright/test";

/** Arguments every browser is started with; software rendering gives WebGL2 without a graphics card. */
export const launchArguments: readonly string[] = [
  "--no-sandbox",
  "--disable-background-networking",
  "--disable-quic",
  "--enable-unsafe-swiftshader",
];

export interface Browser {
  readonly executablePath: string;
  readonly args: readonly string[];
  /** Environment to start it in. */
  readonly env: Readonly<Record<string, string>>;
  /** Which of the ways found it. */
  readonly source: "CHROMIUM_PATH" | "system" | "package";
}

/** A browser that has been seen to start, or null with what was tried. */
export interface BrowserSearch {
  readonly browser: Browser | null;
  readonly reason: string;
}

const systemPaths = [
  "/usr/bin/chromium",
  "/usr/bin/chromium-browser",
  "/usr/bin/google-chrome-stable",
  "/usr/bin/google-chrome",
  "/snap/bin/chromium",
  "/opt/google/chrome/chrome",
  "/Applications/Chromium.app/Contents/MacOS/Chromium",
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
];

/**
 * Finds a Chromium: the one that CHROMIUM_PATH names, else the system's, else the one in the dev dependency @sparticuz/chromium.
 * `TAUTROW_NO_SYSTEM_BROWSER` leaves the system's out, `TAUTROW_NO_BROWSER` all of them, to try what a bare machine would do.
 */
export async function findBrowser(environment: NodeJS.ProcessEnv = process.env): Promise<BrowserSearch> {
  if (environment.TAUTROW_NO_BROWSER) return { browser: null, reason: "TAUTROW_NO_BROWSER is set" };
  const tried: string[] = [];
  const env = plain(environment);
  const attempt = async (executablePath: string, source: Browser["source"], extra: Record<string, string> = {}) => {
    const browser: Browser = { executablePath, args: launchArguments, env: { ...env, ...extra }, source };
    const fault = await faultOfStarting(browser);
    if (fault === null) return { browser, reason: `${source}: ${executablePath}` };
    tried.push(`${source} ${executablePath}: ${fault}`);
    return null;
  };

  const named = environment.CHROMIUM_PATH;
  if (named) {
    const found = await attempt(named, "CHROMIUM_PATH");
    return found ?? { browser: null, reason: tried.join("; ") };
  }
  if (!environment.TAUTROW_NO_SYSTEM_BROWSER) {
    for (const path of systemPaths.filter((candidate) => existsSync(candidate))) {
      const found = await attempt(path, "system");
      if (found) return found;
    }
    if (tried.length === 0) tried.push("system: none in the usual places");
  }
  try {
    const packed = await unpackedBrowser();
    const found =
      (await attempt(packed.executablePath, "package")) ??
      (await attempt(packed.executablePath, "package", { LD_LIBRARY_PATH: await packed.libraries() }));
    if (found) return found;
    // Perhaps an unpacking was cut short: the next search begins afresh.
    await rm(packed.folder, { recursive: true, force: true });
  } catch (error) {
    tried.push(`package: ${error instanceof Error ? error.message : String(error)}`);
  }
  return { browser: null, reason: tried.join("; ") };
}

/** Null when the browser opens an empty page, else what went wrong. */
async function faultOfStarting({ executablePath, args, env }: Browser): Promise<string | null> {
  if (!existsSync(executablePath)) return "no such file";
  try {
    const started = await chromium.launch({ executablePath, args: [...args], env: { ...env }, timeout: 30_000 });
    try {
      await (await started.newPage()).goto("about:blank");
      return null;
    } finally {
      await started.close();
    }
  } catch (error) {
    return error instanceof Error ? (error.message.split("\n")[0] ?? error.name) : String(error);
  }
}

/** The packed browser, unpacked into a folder of its own that carries the version, so that an upgrade never meets an old copy. */
async function unpackedBrowser(): Promise<{
  executablePath: string;
  folder: string;
  libraries: () => Promise<string>;
}> {
  const main = createRequire(import.meta.url).resolve("@sparticuz/chromium");
  const root = join(dirname(main), "..", "..");
  const folder = join(tmpdir(), `tautrow-browser-${versionIn(join(root, "package.json"))}`);
  await mkdir(folder, { recursive: true });
  const usual = process.env.TMPDIR;
  process.env.TMPDIR = folder;
  try {
    const { default: packed } = await import("@sparticuz/chromium");
    const executablePath = await packed.executablePath();
    return { executablePath, folder, libraries: () => unpackedLibraries(join(root, "bin", "al2023.tar.br"), folder) };
  } finally {
    if (usual === undefined) delete process.env.TMPDIR;
    else process.env.TMPDIR = usual;
  }
}

/** The libraries that a bare machine lacks (network security services), from the same package; the path to look in. */
async function unpackedLibraries(archive: string, folder: string): Promise<string> {
  const target = join(folder, "al2023");
  if (!existsSync(target)) {
    const partial = `${target}-${process.pid}`;
    await mkdir(partial, { recursive: true });
    const tar = spawn("tar", ["-xf", "-", "-C", partial], { stdio: ["pipe", "ignore", "ignore"] });
    // tar stops reading at the archive's end mark; what is left of the stream has nowhere to go and is no fault.
    tar.stdin.on("error", () => undefined);
    createReadStream(archive).pipe(createBrotliDecompress()).pipe(tar.stdin);
    const code = await new Promise<number | null>((resolve, reject) => {
      tar.on("error", reject);
      tar.on("close", resolve);
    });
    if (code !== 0) throw new Error("its libraries do not unpack");
    await rename(partial, target).catch(() => rm(partial, { recursive: true, force: true }));
  }
  return join(target, "lib");
}

function versionIn(packageFile: string): string {
  const content: unknown = JSON.parse(readFileSync(packageFile, "utf8"));
  const version = typeof content === "object" && content !== null && "version" in content ? content.version : null;
  return typeof version === "string" ? version : "unknown";
}

function plain(environment: NodeJS.ProcessEnv): Record<string, string> {
  return Object.fromEntries(
    Object.entries(environment).flatMap(([name, value]) => (value === undefined ? [] : [[name, value]])),
  );
}

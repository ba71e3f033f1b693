import { spawn } from "node:child_process";
import { fileURLToPath } from "node:url";
import { ports } from "../../journeys/ports.ts";

/** The built page, served; stop it when it is no longer needed. */
export async function servePage(): Promise<{ readonly address: string; stop(): void }> {
  const root = fileURLToPath(new URL("../../..", import.meta.url));
  const server = spawn(process.execPath, ["--import", "tsx", "tests/journeys/serve.ts"], {
    cwd: root,
    stdio: ["ignore", "ignore", "inherit"],
  });
  for (let attempt = 0; attempt < 480; attempt++) {
    const isUp = await fetch(`http://127.0.0.1:${ports.host}/`).then(
      (response) => response.ok,
      () => false,
    );
    if (isUp) return { address: `http://127.0.0.1:${ports.page}`, stop: () => server.kill() };
    if (server.exitCode !== null) throw new Error("the server ended");
    await new Promise((resolve) => setTimeout(resolve, 250));
  }
  server.kill();
  throw new Error("the page is not served");
}

import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { expect, test } from "vitest";
import { createFolder, createParcelText } from "./create-terminal.ts";

const start_ms = 60_000;
const command = "node src/cli/launch.mjs";

function shell(line: string, options: { readonly input?: string; readonly environment?: Record<string, string> } = {}) {
  return spawnSync("bash", ["-c", line], {
    encoding: "utf8",
    input: options.input ?? "",
    env: { ...process.env, ...options.environment },
  });
}

test("the process plans what is piped in and ends with 0; only the object is on standard output", {
  timeout: start_ms,
}, () => {
  const { status, stdout, stderr } = shell(`${command} plan - --json`, { input: createParcelText() });
  expect([status, stderr]).toEqual([0, ""]);
  expect(JSON.parse(stdout)).toMatchObject({ schema: "tautrow-plan" });
});

test("the process ends with 1 for a file with an error and with 2 for wrong usage", { timeout: start_ms }, () => {
  expect(shell(`${command} check -`, { input: "{" }).status).toBe(1);
  const wrong = shell(`${command} plan nowhere.geojson`);
  expect([wrong.status, wrong.stdout]).toEqual([2, ""]);
  expect(wrong.stderr).toBe("nowhere.geojson does not exist.\n");
});

test("a reader that stops early is no failure", { timeout: start_ms }, () => {
  const { stdout, stderr } = shell(`${command} export - --of vines,posts,stakes | head -c 20`, {
    input: createParcelText(),
  });
  expect(stdout).toHaveLength(20);
  expect(stderr).toBe("");
});

test("run by npm, paths start where the person stands", { timeout: start_ms }, () => {
  const folder = createFolder({ "here.geojson": createParcelText() });
  const environment = { INIT_CWD: folder, npm_lifecycle_event: "plan" };
  expect(shell(`${command} check here.geojson`, { environment }).status).toBe(0);
  expect(shell(`${command} check ${join(folder, "here.geojson")}`).status).toBe(0);
});

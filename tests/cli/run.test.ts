import { expect, test } from "vitest";
import { commands, options } from "../../src/cli/options.ts";
import { createFolder, createParcelText, say } from "./create-terminal.ts";

test("help lists every command on standard output", async () => {
  for (const asked of ["--help", "-h", "help"]) {
    const { code, out, notes } = await say([asked]);
    expect([code, notes]).toEqual([0, ""]);
    for (const command of commands) expect(out).toContain(`  ${command} `);
  }
});

test.each(commands)("help of %s lists its options and no others", async (command) => {
  const { code, out } = await say([command, "--help"]);
  expect(code).toBe(0);
  expect((await say(["help", command])).out).toBe(out);
  for (const option of options) {
    expect(new RegExp(`^ {2}--${option.name}(?![\\w-])`, "m").test(out), option.name).toBe(
      options.some(({ name, commands: of }) => name === option.name && of.includes(command)),
    );
  }
});

test("no command is wrong usage and shows the help, not on standard output", async () => {
  const { code, out, notes } = await say([]);
  expect([code, out]).toEqual([2, ""]);
  expect(notes).toContain("tautrow COMMAND FILE");
});

test.each([
  [["plant", "x.geojson"], '"plant" is not a command'],
  [["plan", "x.geojson", "--bearings", "24"], "Unknown option '--bearings'"],
  [["plan", "x.geojson", "--step", "1"], "Unknown option '--step'"],
  [["plan", "x.geojson", "--bearing"], "argument missing"],
  [["plan"], "Give a file"],
  [["plan", "-"], "Nothing is piped"],
  [["plan", "nowhere.geojson"], "nowhere.geojson does not exist"],
  [["plan", "src"], "src is a folder"],
  [["plan", "package.json", "--units", "furlongs"], '--units is metric, us, metric-bar, metric-head, not "furlongs".'],
  [["plan", "package.json", "--set", "rows.endGap"], "--set takes PATH=VALUE"],
  [["sweep", "package.json", "--step", "0"], "--step is a number of degrees"],
  [["export", "package.json", "--of", "wine"], "There is no export of wine"],
  [["export", "samples/acre-with-notch/project.geojson", "--of", "rows,materials", "--as", "csv"], "add --out DIR"],
  [["export", "package.json", "package.json", "--as", "kml"], "Files of several plans do not fit into one stream"],
  [["export", "package.json", "--as", "paper"], "There is no export as paper. There is geojson, kml,"],
  [["export", "package.json", "--name-length", "short"], '--name-length is a whole number, not "short"'],
  [["export", "package.json", "--points-a-file", "0"], '--points-a-file is a whole number, not "0"'],
  [["export", "package.json", "--peg-beyond", "far"], "--peg-beyond is a length"],
  [["export", "package.json", "--unit", "cubit"], '--unit is m, ft, us-ft, not "cubit"'],
])("%j is wrong usage: %s", async (args, words) => {
  const { code, out, notes } = await say(args);
  expect([code, out]).toEqual([2, ""]);
  expect(notes).toContain(words);
  expect(notes).not.toMatch(/\n\s+at /);
});

test("a date that is no day is wrong usage, a day past the magnetic model is said", async () => {
  const folder = createFolder({ "a.geojson": createParcelText() });
  expect(await say(["plan", "a.geojson", "--date", "tomorrow"], { folder })).toMatchObject({ code: 2 });
  const late = await say(["plan", "a.geojson", "--date", "2040-01-01"], { folder });
  expect(late.code).toBe(0);
  expect(late.out).toContain("No compass reading for 2040-01-01");
});

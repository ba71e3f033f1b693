import { type Arguments, readArguments } from "./arguments.ts";
import { commandHelp, generalHelp } from "./help.ts";
import { type Command, commands } from "./options.ts";
import { exitCode, type Terminal, UsageError } from "./terminal.ts";

/** Runs one command line and gives its exit code. Only bugs are thrown. */
export async function run(given: readonly string[], terminal: Terminal): Promise<number> {
  const [name, ...rest] = given;
  if (name === undefined || name === "--help" || name === "-h" || name === "help") {
    const topic = commands.find((command) => command === rest[0]);
    const isAsked = name !== undefined;
    (isAsked ? terminal.out : terminal.note)(topic === undefined ? generalHelp() : commandHelp(topic));
    return isAsked ? exitCode.fine : exitCode.wrongUsage;
  }
  try {
    const command = commands.find((candidate) => candidate === name);
    if (command === undefined) throw new UsageError(`"${name}" is not a command; there is ${commands.join(", ")}.`);
    if (rest.includes("-h")) return helped(command, terminal);
    const args = readArguments(command, rest);
    return args.has("help") ? helped(command, terminal) : await work(command, args, terminal);
  } catch (problem) {
    if (!(problem instanceof UsageError)) throw problem;
    terminal.note(`${problem.message}\n`);
    return exitCode.wrongUsage;
  }
}

function helped(command: Command, terminal: Terminal): number {
  terminal.out(commandHelp(command));
  return exitCode.fine;
}

/** Each command is loaded when it is asked for: help and mistakes answer at once. */
async function work(command: Command, args: Arguments, terminal: Terminal): Promise<number> {
  switch (command) {
    case "plan":
      return (await import("./commands/plan.ts")).planCommand(args, terminal);
    case "check":
      return (await import("./commands/check.ts")).checkCommand(args, terminal);
    case "sweep":
      return (await import("./commands/sweep.ts")).sweepCommand(args, terminal);
    case "export":
      return (await import("./commands/export.ts")).exportCommand(args, terminal);
    case "compare":
      return (await import("./commands/compare.ts")).compareCommand(args, terminal);
    case "draw":
      return (await import("./commands/draw.ts")).drawCommand(args, terminal);
    case "heights":
      return (await import("./commands/heights.ts")).heightsCommand(args, terminal);
    case "import":
      return (await import("./commands/import.ts")).importCommand(args, terminal);
    default:
      return command satisfies never;
  }
}

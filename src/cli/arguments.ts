import { parseArgs } from "node:util";
import { type Command, options } from "./options.ts";
import { UsageError } from "./terminal.ts";

/** A command's arguments, read. */
export interface Arguments {
  readonly files: readonly string[];
  has(option: string): boolean;
  /** The last value given, or null. */
  value(option: string): string | null;
  /** All values given, in order. */
  values(option: string): readonly string[];
}

/** Reads what stands after the command's name. Throws a UsageError that names what it did not understand. */
export function readArguments(command: Command, given: readonly string[]): Arguments {
  const own = options.filter((option) => option.commands.includes(command));
  const config = Object.fromEntries(
    own.map((option) => [
      option.name,
      {
        type: option.value === null ? "boolean" : "string",
        multiple: true,
        ...(option.short === undefined ? {} : { short: option.short }),
      } as const,
    ]),
  );
  const { values, positionals } = parsed(
    command,
    joinNegative(
      given,
      own.filter((o) => o.value !== null).map((o) => o.name),
    ),
    config,
  );
  const all = (name: string) => (values[name] ?? []).map(String);
  return {
    files: positionals,
    has: (name) => values[name] !== undefined,
    value: (name) => all(name).at(-1) ?? null,
    values: all,
  };
}

function parsed(
  command: Command,
  args: readonly string[],
  config: Record<string, { type: "boolean" | "string"; multiple: true; short?: string }>,
) {
  try {
    return parseArgs({ args: [...args], options: config, allowPositionals: true, strict: true });
  } catch (problem) {
    const said = problem instanceof Error ? problem.message.split(/[.\n]/)[0] : String(problem);
    throw new UsageError(`${said}. See "tautrow ${command} --help".`);
  }
}

/** "--bearing -10" is a value, not another option. */
function joinNegative(given: readonly string[], withValue: readonly string[]): readonly string[] {
  const joined: string[] = [];
  for (const argument of given) {
    const before = joined.at(-1);
    const isNumber = /^-\.?\d/.test(argument);
    if (isNumber && before !== undefined && withValue.some((name) => before === `--${name}`)) {
      joined[joined.length - 1] = `${before}=${argument}`;
    } else joined.push(argument);
  }
  return joined;
}

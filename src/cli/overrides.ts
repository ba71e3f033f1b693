import type { Json } from "../core/index.ts";
import type { Arguments } from "./arguments.ts";
import { options } from "./options.ts";
import { UsageError } from "./terminal.ts";

/** The settings that the options override, in the order of the option table, then every --set as given. */
export function overridesOf(args: Arguments): readonly (readonly [path: string, value: Json])[] {
  const named = options.flatMap((option) => {
    const value = option.path === undefined ? null : args.value(option.name);
    return option.path === undefined || value === null
      ? []
      : [[option.path, settingValue(option.name, value)] as const];
  });
  return [...named, ...args.values("set").map((text) => assignment("set", text))];
}

function settingValue(option: string, value: string): Json {
  const vines = option === "min-row" ? /^(\d+)\s*vines?$/.exec(value.trim()) : null;
  if (vines !== null) return { vines: Number(vines[1]) };
  return numberOrText(value);
}

/** A bare number is SI; anything else is text that the project file's reader knows how to read. */
function numberOrText(value: string): Json {
  return value.trim() !== "" && Number.isFinite(Number(value)) ? Number(value) : value;
}

/** PATH=VALUE as given to an option. Throws a UsageError. */
export function assignment(option: string, text: string): readonly [path: string, value: Json] {
  const equals = text.indexOf("=");
  if (equals < 1)
    throw new UsageError(
      `--${option} takes PATH=VALUE, such as --${option} rows.endGap="3 ft"; it was given "${text}".`,
    );
  const value = text.slice(equals + 1);
  return [text.slice(0, equals).trim(), jsonOrText(value)];
}

function jsonOrText(value: string): Json {
  try {
    const parsed: Json = JSON.parse(value);
    return parsed;
  } catch {
    return value;
  }
}

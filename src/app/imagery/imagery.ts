/** Tiles that the person brings: where they are, whose they are, how they are shown. Kept on this device, never in the project. */
export interface Imagery {
  /** Address with {z}, {x} and {y} in it. */
  readonly template: string;
  /** Whose picture it is: shown on the map while it is on. */
  readonly attribution: string;
  /** Deepest zoom that there are tiles of; nearer the last ones are drawn larger. */
  readonly maxZoom: number;
  /** 0 to 1. */
  readonly opacity: number;
  readonly isOn: boolean;
}

export type TemplateCheck =
  | { readonly ok: true; readonly template: string }
  | { readonly ok: false; readonly sentence: string };

const hereNames: ReadonlySet<string> = new Set(["localhost", "127.0.0.1", "[::1]"]);

/** A tile address as it can be used from a page, or a sentence that says what is wrong with it. */
export function checkTemplate(typed: string, page: string): TemplateCheck {
  const template = typed.trim();
  const missing = ["{z}", "{x}", "{y}"].filter((part) => !template.includes(part));
  if (missing.length > 0) {
    return { ok: false, sentence: `The address needs ${missing.join(", ")} where the tile's numbers go.` };
  }
  const other = /\{(?!z\}|x\}|y\})[^}]*\}?/.exec(template);
  if (other) return { ok: false, sentence: `${other[0]} is not known here: write what stands for it.` };
  const address = URL.canParse(template, page) ? new URL(template, page) : null;
  if (!address) return { ok: false, sentence: "This is not an address." };
  const isOwn = address.origin === new URL(page).origin || hereNames.has(address.hostname);
  if (address.protocol !== "https:" && !(isOwn && address.protocol === "http:")) {
    return { ok: false, sentence: "The address must begin with https:// (or be on this machine)." };
  }
  return { ok: true, template: address.href.replace(/%7B([xyz])%7D/gi, (_, name: string) => `{${name}}`) };
}

/** What was kept, read with care: anyone may have written there. Null when there is none. */
export function readImagery(text: string | null, page: string): Imagery | null {
  if (text === null) return null;
  const kept = parsed(text);
  if (typeof kept !== "object" || kept === null) return null;
  const stated = new Map<string, unknown>(Object.entries(kept));
  const template = stated.get("template");
  const checked = typeof template === "string" ? checkTemplate(template, page) : null;
  if (!checked?.ok) return null;
  const attribution = stated.get("attribution");
  return {
    template: checked.template,
    attribution: typeof attribution === "string" ? attribution : "",
    maxZoom: within(stated.get("maxZoom"), 1, 24, 19),
    opacity: within(stated.get("opacity"), 0.1, 1, 1),
    isOn: stated.get("isOn") === true,
  };
}

/** A number within bounds, or the usual one. */
export function within(value: unknown, least: number, most: number, usual: number): number {
  return typeof value === "number" && value >= least && value <= most ? value : usual;
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

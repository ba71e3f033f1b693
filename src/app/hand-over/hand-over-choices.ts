import { effect, type Signal, signal } from "@preact/signals";
import { type HandOverChoice, type Thing, usualChoice } from "../../core/exchange/choice.ts";
import { formatNamed } from "../../core/exchange/formats.ts";
import type { Store } from "../store.ts";

/** What holds for every format alike. */
type Shared = Pick<HandOverChoice, "rows" | "system" | "unit" | "heights" | "pegBeyond_m" | "baseline">;
/** What each format keeps for itself. */
type Own = Pick<HandOverChoice, "of" | "naming" | "nameLength" | "pointsAFile" | "order" | "together">;

/** What was chosen in the Hand over step, as long as the page is open; each format has its own ticks and names. */
export interface HandOverChoices {
  readonly as: Signal<string>;
  readonly shared: Signal<Shared>;
  readonly own: Signal<Readonly<Record<string, Partial<Own>>>>;
}

const kept = new WeakMap<Store, HandOverChoices>();

/** The choices of a page; what is about single rows and marks goes when another project is opened. */
export function handOverChoicesOf(store: Store): HandOverChoices {
  const known = kept.get(store);
  if (known) return known;
  const { rows, system, unit, heights, pegBeyond_m, baseline } = usualChoice;
  const choices: HandOverChoices = {
    as: signal(usualChoice.as),
    shared: signal({ rows, system, unit, heights, pegBeyond_m, baseline }),
    own: signal({}),
  };
  kept.set(store, choices);
  effect(() => {
    if (store.opened.value > 0) choices.shared.value = { ...choices.shared.peek(), rows: null, baseline: null };
  });
  return choices;
}

/** The choice as it stands, with what is usual where nothing was chosen. */
export function choiceOf({ as, shared, own }: HandOverChoices): HandOverChoice {
  return { ...usualChoice, of: formatNamed(as.value).usual, ...shared.value, ...own.value[as.value], as: as.value };
}

/** Chooses something that every format shares. */
export function chooseForAll({ shared }: HandOverChoices, part: Partial<Shared>): void {
  shared.value = { ...shared.peek(), ...part };
}

/** Chooses something for the format that is looked at. */
export function chooseForFormat({ as, own }: HandOverChoices, part: Partial<Own>): void {
  const format = as.peek();
  own.value = { ...own.peek(), [format]: { ...own.peek()[format], ...part } };
}

/** Ticks a thing, or takes the tick away. */
export function chooseThing(choices: HandOverChoices, thing: Thing, isWanted: boolean): void {
  const others = choiceOf(choices).of.filter((each) => each !== thing);
  chooseForFormat(choices, { of: isWanted ? [...others, thing] : others });
}

import { hoseSuffix } from "../drip/hose-size.ts";
import { type Phrase, quantity, say } from "../finding.ts";
import type { Block } from "../project/project.ts";
import type { DripSettings } from "../project/water-settings.ts";

/** What a block's hose and emitters are called in price lists; no emitters of their own where the hose has them inside. */
export interface DripArticles {
  readonly hose: string;
  readonly emitter: string | null;
}

/**
 * The articles of every block, by its id. Names say what differs from the usual: hose its diameters where they are not the usual ones, emitters
 * their flow, and "plain" where they do not hold their flow by themselves; their pressure only where another of the same name has another one.
 */
export function dripArticles(blocks: readonly Block[]): ReadonlyMap<string, DripArticles> {
  const pressures = new Map<string, number>();
  return new Map(
    blocks.map(({ id, drip }): readonly [string, DripArticles] => {
      const first_kpa = pressures.get(emitterName(drip)) ?? drip.emitterPressure_kpa;
      pressures.set(emitterName(drip), first_kpa);
      const other = first_kpa === drip.emitterPressure_kpa ? "" : `-at-${Math.round(drip.emitterPressure_kpa)}kpa`;
      const emitter = `${emitterName(drip)}${other}`;
      return drip.emitterPlacing === "in-line"
        ? [id, { hose: `inline-hose${hoseSuffix(drip)}-${emitter}-${short(drip.emitterSpacing_m)}m`, emitter: null }]
        : [id, { hose: `hose${hoseSuffix(drip)}`, emitter: `emitter-${emitter}` }];
    }),
  );
}

/** Is an article that comes in coils hose? */
export function isHose(article: string): boolean {
  return article === "hose" || article.startsWith("hose-") || article.startsWith("inline-hose");
}

/** What a shop would still ask about a block's hose. Measures of nominal 1/2 in tube: common practice, no source; makers differ. */
export function hoseSpec(drip: DripSettings): Phrase {
  const nominal = hoseSuffix(drip) === "" ? "nominal 1/2 in, " : "";
  const tube = say`polyethylene tube, ${nominal}about ${quantity("diameter", drip.hoseInside_mm)} inside and ${quantity("diameter", drip.hoseOutside_mm)} outside`;
  if (drip.emitterPlacing === "on-line") return [...tube, ", for punched-in emitters"];
  return [
    ...tube,
    ...say`, with emitters inside every ${quantity("length", drip.emitterSpacing_m)}: `,
    ...emitterWords(drip),
  ];
}

/** The same of emitters to punch in. */
export function emitterSpec(drip: DripSettings): Phrase {
  return [...emitterWords(drip), ", barbed, to punch into the hose"];
}

export function hoseClipSpec({ hoseOutside_mm }: DripSettings): Phrase {
  return say`for hose of ${quantity("diameter", hoseOutside_mm)} outside, on wire`;
}

export function hoseJoinSpec({ hoseInside_mm, hoseOutside_mm }: DripSettings): Phrase {
  return say`straight, for hose of ${quantity("diameter", hoseInside_mm)} inside and ${quantity("diameter", hoseOutside_mm)} outside`;
}

function emitterWords(drip: DripSettings): Phrase {
  const flow = say`${quantity("flow", drip.emitterFlow_lph)} each at ${quantity("pressure", drip.emitterPressure_kpa)}, `;
  return drip.emitterKind === "plain"
    ? [...flow, "not pressure-compensating"]
    : [
        ...flow,
        ...say`pressure-compensating from ${quantity("pressure", drip.emitterLeast_kpa)} to ${quantity("pressure", drip.emitterMost_kpa)}`,
      ];
}

/** "1.893lph", "1.893lph-plain". */
function emitterName({ emitterFlow_lph, emitterKind }: DripSettings): string {
  return `${short(emitterFlow_lph)}lph${emitterKind === "plain" ? "-plain" : ""}`;
}

function short(value: number): string {
  return String(Number(value.toFixed(3)));
}

import { type Phrase, quantity, say } from "../finding.ts";
import { pressureOf_kpa } from "../hydraulics/pressure-head.ts";
import { si } from "../project/si.ts";
import type { HeadWork, HeadWorkKind } from "../project/water-settings.ts";
import { demandOf_lps } from "./supply.ts";
import type { Supply, WaterPart } from "./watering.ts";
import type { WateringJob } from "./watering-job.ts";

const items: Readonly<Record<HeadWorkKind, string>> = {
  "isolating-valve": "Isolating valves",
  "backflow-device": "Backflow devices",
  "check-valve": "Check valves",
  filter: "Filters",
  regulator: "Pressure regulators",
  gauge: "Pressure gauges",
  "flow-meter": "Flow meters",
  "air-vent": "Air vents",
  "injector-port": "Injector ports",
};

const purposes: Readonly<Record<HeadWorkKind, string>> = {
  "isolating-valve": "shuts the water off for work on the head works; opened and closed slowly",
  "backflow-device":
    "keeps water of the field out of what others drink; the kind that your authority approves, fitted and tested by whoever is licensed to",
  "check-valve": "keeps water from running back; it is no backflow device",
  filter: "keeps sand and rust out of the emitters",
  regulator: "holds the pressure down to what hose and emitters stand",
  gauge: "show what comes in and when the filter is due for cleaning",
  "flow-meter": "shows a clogged or a broken line at once",
  "air-vent": "lets air out when the line fills, and in when it drains",
  "injector-port": "for fertilizer; only behind a backflow device and with the valves that your authority asks for",
};

/** Emitters of less than 0.5 gal/h pass only what a finer screen lets through. Common practice, no source. */
const fineFrom_lph = si("flow", "0.5 gal/h");

/**
 * The head works as parts to buy, in the order water meets them, equal ones together; none while the water is not known. Sizes are not
 * chosen: each says the flow and the pressure it has to stand.
 */
export function headWorkParts(job: WateringJob, supply: Supply | null): readonly WaterPart[] {
  if (job.water.kind === "unknown") return [];
  const parts: WaterPart[] = [];
  for (const work of job.water.headWorks) {
    const article = articleOf(work);
    const at = parts.findIndex((part) => part.article === article);
    const part = parts[at] ?? partOf(work, job, supply);
    const counted = { ...part, quantity: part.quantity + 1 };
    if (at < 0) parts.push(counted);
    else parts[at] = counted;
  }
  return parts;
}

function articleOf({ kind, outlet_kpa }: HeadWork): string {
  return outlet_kpa === null ? kind : `${kind}-${Math.round(outlet_kpa)}kpa`;
}

function partOf(work: HeadWork, job: WateringJob, supply: Supply | null): WaterPart {
  return {
    kind: work.kind,
    article: articleOf(work),
    item: items[work.kind],
    spec: [...own(work, job), ...stands(work, job, supply)],
    unit: "pieces",
    quantity: 0,
    perRow: null,
    pieces_m: [],
    purpose: purposes[work.kind],
    spare: 0,
  };
}

function own({ kind, outlet_kpa }: HeadWork, { blocks }: WateringJob): Phrase {
  if (outlet_kpa !== null) return say`set to ${quantity("pressure", outlet_kpa)}, `;
  if (kind !== "filter") return [];
  const finest_lph = Math.min(...blocks.map(({ drip }) => drip.emitterFlow_lph));
  return finest_lph < fineFrom_lph
    ? say`screen or disc, as fine as the maker of the ${quantity("flow", finest_lph)} emitters asks for, finer than for larger ones, `
    : say`screen or disc, of the mesh that the emitter's maker asks for, `;
}

/** What it has to let through, and the pressure it has to bear: that with nothing flowing. */
function stands({ kind }: HeadWork, job: WateringJob, supply: Supply | null): Phrase {
  const bears: Phrase =
    supply === null
      ? say`for the pressure of your water`
      : say`for ${quantity("pressure", pressureOf_kpa(supply.static_m - job.source.height_m))} or more`;
  if (kind === "gauge" || kind === "air-vent" || kind === "injector-port") return bears;
  const most_lps = Math.min(demandOf_lps(job), supply?.most_lps ?? Infinity);
  return [...bears, ...say` and up to ${quantity("flow", most_lps * 3600)}`];
}

import { type Finding, type Phrase, quantity, say } from "../finding.ts";
import { endAssemblyNames } from "./end-assembly-names.ts";
import { defaultsUsed } from "./findings.ts";
import type {
  Block,
  GroundSettings,
  MainLineSettings,
  MaterialSettings,
  PostSettings,
  TrellisSettings,
  TrenchSettings,
} from "./project.ts";
import type {
  groundSection,
  mainLineSection,
  materialsSection,
  rowsSection,
  trellisSection,
  trenchSection,
} from "./schema.ts";
import type { Stated } from "./schema-parts.ts";
import type { dripSection, waterSection } from "./water-schema.ts";
import type { WaterSettings } from "./water-settings.ts";

interface StatedSettings {
  readonly ground: Stated<typeof groundSection>;
  readonly mainLine: Stated<typeof mainLineSection>;
  readonly trench: Stated<typeof trenchSection>;
  readonly water: Stated<typeof waterSection>;
  readonly materials: Stated<typeof materialsSection>;
  readonly blocks: readonly {
    readonly rows: Stated<typeof rowsSection>;
    readonly trellis: Stated<typeof trellisSection>;
    readonly drip: Stated<typeof dripSection>;
  }[];
}

interface Settled {
  readonly ground: GroundSettings;
  readonly mainLine: MainLineSettings;
  readonly trench: TrenchSettings;
  readonly water: WaterSettings;
  readonly materials: MaterialSettings;
  readonly blocks: readonly Block[];
}

/** One note with every value that was taken as usual, in the first block it was taken for; null when all is stated. */
export function defaultsNote(stated: StatedSettings, settled: Settled): Finding | null {
  const ground = missing(stated.ground, groundPhrases(settled.ground));
  const line = missing(stated.mainLine, mainLinePhrases(settled.mainLine));
  const dug = missing(stated.trench, trenchPhrases(settled.trench));
  const water = missing(stated.water, waterPhrases(settled.water));
  const supplies = missing(stated.materials, materialPhrases(settled.materials));
  const ofBlocks = new Map<string, Phrase>();
  for (const [i, block] of settled.blocks.entries()) {
    const own = stated.blocks[i];
    if (own === undefined) continue;
    const all = { ...own.rows, ...own.trellis, ...own.drip };
    for (const [name, phrase] of missing(all, blockPhrases(block))) {
      if (!ofBlocks.has(name)) ofBlocks.set(name, phrase);
    }
  }
  const phrases = [
    ...ofBlocks.values(),
    ...[...ground, ...line, ...dug, ...water].map(([, phrase]) => phrase),
    ...supplies.map(([, phrase]) => phrase),
  ];
  if (phrases.length === 0) return null;
  return defaultsUsed(phrases.flatMap((phrase, i) => (i === 0 ? phrase : [", ", ...phrase])));
}

type Phrases = Readonly<Record<string, Phrase>>;

function missing(stated: object, phrases: Phrases): readonly (readonly [string, Phrase])[] {
  return Object.entries(phrases).filter(([name]) => !Object.hasOwn(stated, name));
}

function blockPhrases({ rows, trellis, drip }: Block): Phrases {
  return {
    bearing: say`bearing along the longest edge`,
    rowSpacing: say`row spacing ${quantity("length", rows.rowSpacing_m)}`,
    vineSpacing: say`vine spacing ${quantity("length", rows.vineSpacing_m)}`,
    headland: say`headland ${quantity("length", rows.headland_m)}`,
    rowOne: say`row 1 placed so that the rows lie in the middle`,
    firstSide: say`row 1 on the ${rows.firstSide === "left" ? "west or north" : "east or south"} side`,
    minRow: rows.minRow.kind === "length" ? say`shortest row ${quantity("length", rows.minRow.length_m)}` : [],
    rowEnd: say`rows end at whole ${rows.rowEnd === "vines" ? "vine spacings" : rows.rowEnd}`,
    trim: say`the rest left at ${rows.trim} ends`,
    endGap: say`end post to first vine ${quantity("length", rows.endGap_m)}`,
    vines: say`vines ${rows.vines} in the row`,
    bay: say`${rows.bay_vines} vines a bay`,
    bays: say`bays of whole vine spacings`,
    distancesTo: say`distances counted to the ${rows.distancesTo === "anchor" ? "anchor" : "end post"}`,
    anchorOut: say`anchor ${quantity("length", rows.anchorOut_m)} outside the end post`,
    rowCost: say`a row counted as ${quantity("length", rows.rowCost_m)} less when bearings are compared`,
    wires: wiresPhrase(trellis),
    tieOffStart: say`a ${trellis.tieOffStart.kind} at the start of wires`,
    tieOffEnd: say`a ${trellis.tieOffEnd.kind} at their end`,
    endAssembly: say`${endAssemblyNames[trellis.endAssembly.kind]}`,
    endPost: postPhrase("end post", trellis.endPost),
    linePost: postPhrase("line post", trellis.linePost),
    stake: say`stakes ${quantity("length", trellis.stake.embedment_m)} deep`,
    coldest: say`wire reckoned down to ${quantity("temperature", trellis.coldest_c)}`,
    hottest: say`up to ${quantity("temperature", trellis.hottest_c)}`,
    tensionedAt: say`tightened at ${quantity("temperature", trellis.tensionedAt_c)}`,
    leastClearance: say`wires and hose to hang ${quantity("length", trellis.leastClearance_m)} clear of the ground`,
    stakesPerVine: say`stakes a vine: ${trellis.stakesPerVine}`,
    emitterFlow: say`emitter ${quantity("flow", drip.emitterFlow_lph)}`,
    emittersPerVine: say`emitters a vine: ${drip.emittersPerVine}`,
    emitterKind: say`${drip.emitterKind} emitters`,
    emitterPressure: say`their flow at ${quantity("pressure", drip.emitterPressure_kpa)}`,
    hoseInside: say`hose ${quantity("diameter", drip.hoseInside_mm)} inside`,
    slack: say`${quantity("ratio", drip.slack_ratio)} of slack`,
    overrun: say`hose ${quantity("length", drip.overrun_m)} past the last vine`,
  };
}

function wiresPhrase({ wires }: TrellisSettings): Phrase {
  return wires.flatMap(({ purpose, height_m, diameter_mm }, i) => [
    ...say`${i === 0 ? "" : ", "}${purpose} wire ${quantity("diameter", diameter_mm)} at ${quantity("length", height_m)}`,
  ]);
}

function postPhrase(name: string, post: PostSettings): Phrase {
  return say`${name} ${quantity("length", post.embedment_m)} deep`;
}

function groundPhrases(ground: GroundSettings): Phrases {
  return {
    setback: say`setback ${quantity("length", ground.setback_m)}`,
    obstacleDistance: say`distance from obstacles ${quantity("length", ground.obstacleDistance_m)}`,
    noPlantDistance: say`distance from no-plant lines and areas ${quantity("length", ground.noPlantDistance_m)}`,
    alleyWidth: say`cross alley ${quantity("length", ground.alleyWidth_m)}`,
  };
}

function mainLinePhrases(line: MainLineSettings): Phrases {
  const lanes = {
    inside: "between end posts and first vines",
    between: "between end posts and anchors",
    beyond: "beyond the anchors",
  };
  return {
    lane: say`main line ${lanes[line.lane]}`,
    postDistance: say`${quantity("length", line.postDistance_m)} from posts and anchors`,
    boundaryDistance: say`and ${quantity("length", line.boundaryDistance_m)} from the outline`,
  };
}

function trenchPhrases(trench: TrenchSettings): Phrases {
  return {
    pipe: say`pipe ${quantity("diameter", trench.pipe.outside_mm)} outside`,
    cover: say`${quantity("length", trench.cover_m)} of ground over it`,
    tool:
      trench.tool === "hand"
        ? say`dug by hand`
        : say`dug with ${trench.tool === "trencher" ? "a trencher" : "an excavator"}`,
    soil: say`in ${trench.soil}`,
  };
}

/** While the water is not known nothing is taken of it. */
function waterPhrases(water: WaterSettings): Phrases {
  if (water.kind === "unknown") return {};
  return {
    hoursADay: say`water ${quantity("time", water.hoursADay_h)} a day`,
    margin: say`${quantity("ratio", water.margin_ratio)} of its flow not counted on`,
  };
}

function materialPhrases(materials: MaterialSettings): Phrases {
  return {
    wireCoil: say`wire coils of ${quantity("length", materials.wireCoils_m[0] ?? 0)}`,
    hoseCoil: say`hose coils of ${quantity("length", materials.hoseCoils_m[0] ?? 0)}`,
    coilReserve: say`${quantity("length", materials.cutting.reserve_m)} kept back on every coil`,
    coilReserveShare: say`and ${quantity("ratio", materials.cutting.reserve_ratio)} of it`,
    cutSlop: say`${quantity("length", materials.cutting.slop_m)} lost at every cut`,
    wireJoins: say`joins in wire ${materials.cutting.wireJoins}`,
    hoseJoins: say`joins in hose ${materials.cutting.hoseJoins}`,
    stakeClipBag: say`stake clips in bags of ${materials.stakeClipBag}`,
    hoseClipBag: say`hose clips in bags of ${materials.hoseClipBag}`,
    emitterBag: say`emitters in bags of ${materials.emitterBag}`,
    stapleBag: say`staples in boxes of ${materials.stapleBag}`,
    vineSpare: say`spare vines ${quantity("ratio", materials.vineSpare_ratio)}`,
    clipSpare: say`spare clips ${quantity("ratio", materials.clipSpare_ratio)}`,
    gripperSpare: say`spare grippers ${quantity("ratio", materials.gripperSpare_ratio)}`,
    emitterSpare: say`spare emitters ${quantity("ratio", materials.emitterSpare_ratio)}`,
    linePostSpare: say`spare line posts ${quantity("ratio", materials.linePostSpare_ratio)}`,
    endPostSpare: say`spare end posts: ${materials.endPostSpare}`,
  };
}

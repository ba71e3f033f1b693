import * as z from "zod/mini";
import { unitSystems } from "../units.ts";
import {
  coatings,
  endAssemblyKinds,
  heightSurfaces,
  lanes,
  pipeJoints,
  soilClasses,
  tensileClasses,
  tieOffKinds,
  trenchTools,
  wireHolds,
} from "./project.ts";
import { amount, count, label, place, quantity, section, sizes, words } from "./schema-parts.ts";

/*
 * The settings as the file states them, section by section, every member optional: what is not stated comes from the defaults.
 * Limits are common sense, no source: beyond them a number is a slip or in the wrong unit. They are said in the finding.
 */

export const groundSection = section({
  setback: quantity("length", 0, 500),
  obstacleDistance: quantity("length", 0, 500),
  noPlantDistance: quantity("length", 0, 500),
  alleyWidth: quantity("length", 0, 100),
  steepestAlong: quantity("ratio", 0, 1),
  steepestAcross: quantity("ratio", 0, 1),
  heights: words(...heightSurfaces),
});

const bearing = z.union(
  [quantity("angle", -360, 360), words("longest-edge", "best"), z.object({ edge: label })],
  'it must be degrees (24 or "24 deg"), "longest-edge", "best" or {"edge": "<feature id>"}',
);

const lockedRange = z.tuple(
  [quantity("angle", -360, 360), quantity("angle", -360, 360)],
  "a locked range must be [from, to] in degrees",
);

export const rowsSection = section({
  bearing,
  rowSpacing: quantity("length", 0.5, 20),
  vineSpacing: quantity("length", 0.2, 20),
  headland: quantity("length", 0, 100),
  rowOne: z.union(
    [words("centred", "most-row"), z.object({ fromSide: quantity("length", 0, 1000) }), z.object({ through: place })],
    'it must be "centred", "most-row", {"fromSide": "10 ft"} or {"through": [longitude, latitude]}',
  ),
  firstSide: words("left", "right"),
  minRow: z.union(
    [quantity("length", 0, 5000), z.object({ vines: count(0, 5000) })],
    'it must be a length such as "50 ft", or {"vines": 10}',
  ),
  rowEnd: words("all", "vines", "bays"),
  trim: words("both", "start", "end"),
  endGap: quantity("length", 0, 50),
  vines: words("centred", "from-start", "aligned"),
  bay: count(1, 50),
  bays: words("whole-vines", "equal"),
  distancesTo: words("end-post", "anchor"),
  anchorOut: quantity("length", 0, 20),
  lockedBearings: z.array(lockedRange, "it must be a list of ranges such as [[80, 100]]"),
  rowCost: quantity("length", 0, 1000),
});

const tieOff = z.object(
  {
    kind: z.exactOptional(words(...tieOffKinds)),
    allowance: z.exactOptional(quantity("length", 0, 10)),
  },
  'it must have a kind and an allowance, such as {"kind": "loop", "allowance": "1 m"}',
);

const wire = z.object(
  {
    purpose: words("fruiting", "drip", "foliage"),
    height: quantity("length", 0, 5),
    diameter: z.exactOptional(quantity("diameter", 0.5, 10)),
    count: z.exactOptional(count(1, 10)),
    movable: z.exactOptional(z.boolean("it must be true or false")),
    tensile: z.exactOptional(words(...tensileClasses)),
    coating: z.exactOptional(words(...coatings)),
    tension: z.exactOptional(quantity("force", 0, 20_000)),
    tieOffStart: z.exactOptional(tieOff),
    tieOffEnd: z.exactOptional(tieOff),
    tensioners: z.exactOptional(count(0, 20)),
  },
  'a wire must have a purpose and a height, such as {"purpose": "fruiting", "height": "36 in"}',
);

const post = z.object(
  {
    holds: z.exactOptional(words(...wireHolds)),
    diameter: z.exactOptional(quantity("diameter", 10, 500)),
    embedment: z.exactOptional(quantity("length", 0, 5)),
    above: z.exactOptional(quantity("length", 0, 3)),
    length: z.exactOptional(quantity("length", 0.2, 12)),
    firstNotch: z.exactOptional(quantity("length", 0, 3)),
    notchPitch: z.exactOptional(quantity("length", 0.005, 1)),
  },
  'it must be an object such as {"holds": "staple", "embedment": "2 ft"}',
);

const endAssembly = z.object(
  {
    kind: z.exactOptional(words(...endAssemblyKinds)),
    postAngle: z.exactOptional(quantity("angle", 40, 90)),
    leanDirection: z.exactOptional(words("out", "in")),
    tieHeight: z.exactOptional(quantity("length", 0.1, 5)),
    braceHeight: z.exactOptional(quantity("length", 0.1, 5)),
    braceLength: z.exactOptional(quantity("length", 0.2, 10)),
    tieWire: z.exactOptional(quantity("diameter", 0.5, 10)),
    tieStrands: z.exactOptional(count(1, 4)),
    concreteHole: z.exactOptional(quantity("length", 0, 2)),
    concreteBag: z.exactOptional(quantity("volume", 1, 1000)),
  },
  'it must be an object such as {"kind": "leaning", "postAngle": 60}',
);

const stake = z.object(
  {
    embedment: z.exactOptional(quantity("length", 0, 3)),
    above: z.exactOptional(quantity("length", 0, 3)),
    length: z.exactOptional(quantity("length", 0.2, 6)),
  },
  'it must be an object such as {"embedment": "1 ft"}',
);

export const trellisSection = section({
  wires: z.array(wire, "it must be a list of wires"),
  tieOffStart: tieOff,
  tieOffEnd: tieOff,
  endAssembly,
  endPost: post,
  linePost: post,
  stake,
  stakesPerVine: count(0, 4),
  postLengths: sizes(0.2, 12),
  stakeLengths: sizes(0.2, 6),
  frostDepth: quantity("length", 0, 4),
  cropPerVine: quantity("mass", 0, 100),
  tensionedAt: quantity("temperature", -40, 60),
  coldest: quantity("temperature", -60, 60),
  hottest: quantity("temperature", -40, 80),
  anchorCapacity: quantity("force", 1, 1_000_000),
  leastClearance: quantity("length", 0, 3),
  warnShare: quantity("ratio", 0.01, 1),
  mostShare: quantity("ratio", 0.01, 1),
});

const stock = z.object(
  {
    article: label,
    pieces: z.exactOptional(count(0, 10_000_000)),
    coils: z.exactOptional(z.array(quantity("length", 0, 100_000), "it must be a list of lengths")),
  },
  'it must name an article and what is there, such as {"article": "wire-13ga", "coils": ["640 ft"]}',
);

export const priceEntry = z.object(
  {
    article: label,
    size: quantity("length", 0, 10_000_000),
    price: z.exactOptional(amount),
    mass: z.exactOptional(quantity("mass", 0, 100_000)),
    note: z.exactOptional(label),
  },
  'it must name an article and a package size, such as {"article": "wire-13ga", "size": "1000 ft", "price": 89}',
);

export const materialsSection = section({
  wireCoil: sizes(1, 100_000),
  hoseCoil: sizes(1, 100_000),
  coilReserve: quantity("length", 0, 1000),
  coilReserveShare: quantity("ratio", 0, 0.5),
  cutSlop: quantity("length", 0, 10),
  wireJoins: words("allowed", "forbidden"),
  hoseJoins: words("allowed", "forbidden"),
  joinLength: quantity("length", 0, 5),
  wireJoinPrice: amount,
  hoseJoinPrice: amount,
  heaviestCoil: quantity("mass", 0.1, 10_000),
  stakeClipBag: count(1, 1_000_000),
  hoseClipBag: count(1, 1_000_000),
  emitterBag: count(1, 1_000_000),
  stapleBag: count(1, 1_000_000),
  vineSpare: quantity("ratio", 0, 1),
  clipSpare: quantity("ratio", 0, 1),
  emitterSpare: quantity("ratio", 0, 1),
  linePostSpare: quantity("ratio", 0, 1),
  gripperSpare: quantity("ratio", 0, 1),
  stakeSpare: quantity("ratio", 0, 1),
  endPostSpare: count(0, 1000),
  currency: label,
  onHand: z.array(stock, "it must be a list of what is there already"),
  prices: z.array(priceEntry, "it must be a list of packages with their prices"),
});

const pin = z.object(
  { block: z.exactOptional(label), rows: label, end: words("start", "end") },
  'it must name rows and the end that meets the water, such as {"rows": "1-12", "end": "start"}',
);

/** A price for a length of something: `{"price": 3, "per": "1 ft"}`, in a metre. */
const pricePerLength = z.pipe(
  z.object({ price: amount, per: quantity("length", 0.01, 1000) }, 'it must be such as {"price": 3, "per": "1 ft"}'),
  z.transform<{ price: number; per: number }, number>(({ price, per }) => price / per),
);

export const mainLineSection = section({
  source: label,
  lane: words(...lanes),
  postDistance: quantity("length", 0, 50),
  obstacleDistance: quantity("length", 0, 500),
  noPlantDistance: quantity("length", 0, 500),
  boundaryDistance: quantity("length", 0, 500),
  pins: z.array(pin, "it must be a list of rows with the end that meets the water"),
  trenchPrice: pricePerLength,
  crossingPrice: amount,
  crossingAs: quantity("length", 0, 10_000),
});

const pace = z.tuple(
  [quantity("length", 0.1, 10_000), quantity("length", 0.1, 10_000)],
  'it must be the slowest and the fastest an hour, such as ["30 m", "100 m"]',
);

const pipe = z.object(
  {
    size: z.exactOptional(label),
    outside: z.exactOptional(quantity("diameter", 5, 1000)),
    inside: z.exactOptional(quantity("diameter", 3, 1000)),
    stick: z.exactOptional(quantity("length", 0.5, 1000)),
    joint: z.exactOptional(words(...pipeJoints)),
  },
  'it must name a size, such as {"size": "pvc-40-2in"}, or state its own diameters',
);

export const trenchSection = section({
  pipe,
  cover: quantity("length", 0, 5),
  frostDepth: quantity("length", 0, 4),
  grade: quantity("ratio", 0, 0.5),
  bedding: quantity("length", 0, 1),
  tool: words(...trenchTools),
  width: quantity("length", 0.02, 5),
  sideSlope: z.number("it must be a number, horizontal over vertical").check(z.minimum(0), z.maximum(5)),
  turningRoom: quantity("length", 0, 50),
  dug: words("before-posts", "after-posts"),
  soil: words(...soilClasses),
  swell: quantity("ratio", 0, 2),
  stationStep: quantity("length", 0.5, 500),
  leastLow: quantity("length", 0, 5),
  dugPerHour: pace,
  laidPerHour: pace,
  hoursADay: quantity("time", 0.1, 24),
  people: count(1, 100),
  testPressure: quantity("pressure", 0, 5000),
  soilBearing: quantity("pressure", 1, 2000),
});

export const frameSection = section({ origin: place });

const planting = z.object(
  {
    rows: label,
    variety: label,
    rootstock: z.exactOptional(label),
    spare: z.exactOptional(quantity("ratio", 0, 1)),
  },
  'a planting must have rows and a variety, such as {"rows": "1-12", "variety": "…"}',
);

export const rootSection = section({
  name: label,
  units: words(...unitSystems),
});

export const blockSection = section({
  id: label,
  name: label,
  plantings: z.array(planting, "it must be a list of plantings"),
});

/** Members that are objects of their own, read apart. */
export const rootSections = [
  "version",
  "frame",
  "ground",
  "mainLine",
  "trench",
  "water",
  "sets",
  "season",
  "rows",
  "trellis",
  "drip",
  "materials",
  "blocks",
] as const;
export const blockSections = ["rows", "trellis", "drip"] as const;

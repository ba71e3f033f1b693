import * as z from "zod/mini";
import { count, label, place, quantity, section, words } from "./schema-parts.ts";

/*
 * The settings as the file states them, section by section, every member optional: what is not stated comes from the defaults.
 * Limits are common sense, no source: beyond them a number is a slip or in the wrong unit. They are said in the finding.
 */

export const groundSection = section({
  setback: quantity("length", 0, 500),
  obstacleDistance: quantity("length", 0, 500),
  noPlantDistance: quantity("length", 0, 500),
  alleyWidth: quantity("length", 0, 100),
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

const wire = z.object(
  {
    purpose: words("fruiting", "drip", "foliage"),
    height: quantity("length", 0, 5),
    diameter: z.exactOptional(quantity("diameter", 0.5, 10)),
    count: z.exactOptional(count(1, 10)),
  },
  'a wire must have a purpose and a height, such as {"purpose": "fruiting", "height": "36 in"}',
);

const tieOff = z.object(
  {
    kind: z.exactOptional(words("gripper", "loop")),
    allowance: z.exactOptional(quantity("length", 0, 10)),
  },
  'it must have a kind and an allowance, such as {"kind": "loop", "allowance": "1 m"}',
);

export const trellisSection = section({
  wires: z.array(wire, "it must be a list of wires"),
  tieOffStart: tieOff,
  tieOffEnd: tieOff,
  stakesPerVine: count(0, 4),
});

export const dripSection = section({
  emitterFlow: quantity("flow", 0, 100),
  emittersPerVine: count(0, 10),
  overrun: quantity("length", 0, 20),
});

export const materialsSection = section({
  wireCoil: quantity("length", 1, 100_000),
  hoseCoil: quantity("length", 1, 100_000),
  stakeClipBag: count(1, 1_000_000),
  hoseClipBag: count(1, 1_000_000),
  emitterBag: count(1, 1_000_000),
  vineSpare: quantity("ratio", 0, 1),
  clipSpare: quantity("ratio", 0, 1),
  emitterSpare: quantity("ratio", 0, 1),
  linePostSpare: quantity("ratio", 0, 1),
  endPostSpare: count(0, 1000),
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
  units: words("us", "metric"),
});

export const blockSection = section({
  id: label,
  name: label,
  plantings: z.array(planting, "it must be a list of plantings"),
});

/** Members that are objects of their own, read apart. */
export const rootSections = ["version", "frame", "ground", "rows", "trellis", "drip", "materials", "blocks"] as const;
export const blockSections = ["rows", "trellis", "drip"] as const;

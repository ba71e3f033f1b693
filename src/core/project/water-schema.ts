import * as z from "zod/mini";
import { count, label, quantity, section, words } from "./schema-parts.ts";
import {
  barbSizes,
  emitterKinds,
  emitterPlacings,
  evapotranspirationMethods,
  frictionLaws,
  headWorkKinds,
  pipeFamilies,
  pipeSizings,
  setBorders,
  valvePatterns,
  waterKinds,
} from "./water-settings.ts";

/* Settings of the water, the drip and the season; limits as in schema.ts. */

const bare = (min: number, max: number) =>
  z.number(`it must be a number from ${min} to ${max}`).check(z.minimum(min), z.maximum(max));

const test = z.object(
  {
    volume: quantity("volume", 0, 100_000),
    time: quantity("time", 0, 100),
    pressure: z.exactOptional(quantity("pressure", 0, 5000)),
  },
  'it must say what ran into the bucket and how long it took, such as {"volume": "5 gal", "time": "20 s", "pressure": "40 psi"}',
);

const pumpPoint = z.object(
  { flow: quantity("flow", 0, 10_000_000), pressure: quantity("pressure", 0, 5000) },
  'it must be a flow and its pressure, such as {"flow": "10 gal/min", "pressure": "50 psi"}',
);

const headWork = z.object(
  {
    kind: words(...headWorkKinds),
    loss: z.exactOptional(quantity("pressure", 0, 1000)),
    dirtyLoss: z.exactOptional(quantity("pressure", 0, 1000)),
    atFlow: z.exactOptional(quantity("flow", 0, 10_000_000)),
    outlet: z.exactOptional(quantity("pressure", 1, 2000)),
  },
  'it must name what stands there, such as {"kind": "filter", "loss": "3 psi", "dirtyLoss": "8 psi"}',
);

export const waterSection = section({
  kind: words(...waterKinds),
  staticPressure: quantity("pressure", 0, 5000),
  tests: z.array(test, "it must be a list of bucket tests"),
  pump: z.array(pumpPoint, "it must be a list of points of the pump's curve"),
  leastFlow: quantity("flow", 0, 10_000_000),
  tankLevel: quantity("length", -50, 500),
  limitFlow: quantity("flow", 0, 10_000_000),
  others: quantity("flow", 0, 10_000_000),
  hoursADay: quantity("time", 0, 24),
  recovery: quantity("flow", 0, 10_000_000),
  stored: quantity("volume", 0, 1_000_000_000),
  height: quantity("length", -500, 9000),
  margin: quantity("ratio", 0, 0.9),
  headWorks: z.array(headWork, "it must be a list of what stands between the water and the main line"),
  closing: quantity("time", 0, 1),
  temperature: quantity("temperature", 0, 60),
});

export const dripSection = section({
  emitterFlow: quantity("flow", 0, 100),
  emittersPerVine: count(0, 10),
  emitterPressure: quantity("pressure", 1, 1000),
  emitterKind: words(...emitterKinds),
  emitterExponent: bare(0, 1),
  emitterVariation: quantity("ratio", 0, 0.5),
  emitterLeast: quantity("pressure", 0, 1000),
  emitterMost: quantity("pressure", 1, 2000),
  emitterPlacing: words(...emitterPlacings),
  emitterOffset: quantity("length", 0, 2),
  emitterSpacing: quantity("length", 0.05, 10),
  barb: words(...barbSizes),
  overrun: quantity("length", 0, 20),
  slack: quantity("ratio", 0, 0.1),
  hoseInside: quantity("diameter", 3, 200),
  hoseOutside: quantity("diameter", 4, 220),
  hoseMost: quantity("pressure", 1, 2000),
  riserInside: quantity("diameter", 3, 200),
  friction: words(...frictionLaws),
  hoseRoughness: bare(50, 200),
  evenness: quantity("ratio", 0.3, 1),
});

const setPin = z.object(
  { block: z.exactOptional(label), rows: label, set: count(1, 500) },
  'it must name rows and their set, such as {"rows": "1-12", "set": 1}',
);

export const setsSection = section({
  pattern: words(...valvePatterns),
  count: count(1, 500),
  follow: words(...setBorders),
  pins: z.array(setPin, "it must be a list of rows with their set"),
  regulator: quantity("pressure", 1, 2000),
  control: words("hand", "controller"),
  sizing: words(...pipeSizings),
  family: words(...pipeFamilies),
  mostVelocity: bare(0.1, 10),
  friction: words(...frictionLaws),
  roughness: bare(50, 200),
});

const twelve = (each: z.ZodMiniType<number>) =>
  z
    .array(each, "it must be a list of twelve, January first")
    .check(z.length(12, "it must be a list of twelve, January first"));

/** Depth of water: "0.25 in", or mm as a bare number. */
const depth = quantity("depth", 0, 2000);

const month = bare(1, 13);

export const seasonSection = section({
  reference: twelve(depth),
  lowest: twelve(quantity("temperature", -60, 50)),
  highest: twelve(quantity("temperature", -60, 60)),
  method: words(...evapotranspirationMethods),
  rain: twelve(depth),
  rainShare: quantity("ratio", 0, 1),
  cropStart: bare(0, 2),
  cropMid: bare(0, 2),
  cropEnd: bare(0, 2),
  stages: z.tuple([month, month, month, month], "it must be four months, such as [4, 6, 8, 11]"),
  shaded: quantity("ratio", 0, 1),
  usualShare: quantity("ratio", 0, 1.5),
  peakShare: quantity("ratio", 0, 1.5),
  soil: quantity("depth", 0, 500),
  roots: quantity("length", 0, 5),
  depletion: quantity("ratio", 0, 1),
  young: quantity("ratio", 0, 1),
  leaching: quantity("ratio", 0, 0.9),
});

import { type LawName, lawCodes } from "../../src/core/hydraulics/friction-law.ts";
import type { Network, SupplyCurve } from "../../src/core/hydraulics/network.ts";
import type { EmitterLaw, Outlet } from "../../src/core/hydraulics/outlet.ts";

/** Roughness of plastic pipe, as tables have it; EPANET takes none for an error. */
const plastic_mm = 0.0015;

/** A pipe and the node it leads to. */
export interface PipeWish {
  readonly upstream: number;
  readonly length_m: number;
  readonly inside_mm: number;
  readonly height_m?: number;
  readonly outlet?: number;
  readonly minor?: number;
  readonly regulator_m?: number;
  /** Else as the network's. */
  readonly roughness?: number;
}

/** What all pipes of a made network share. */
export interface NetworkWish {
  readonly law: LawName;
  readonly outlets: readonly Outlet[];
  readonly viscosity_m2ps?: number;
  readonly sourceHeight_m?: number;
  readonly roughness?: number;
}

/** A network of the pipes listed, the first of them node 1; C 150, or the roughness of plastic, where nothing is said. */
export function createNetwork(pipes: readonly PipeWish[], wish: NetworkWish): Network {
  const source: PipeWish = { upstream: -1, length_m: 0, inside_mm: 0, height_m: wish.sourceHeight_m ?? 0 };
  const nodes = [source, ...pipes];
  const roughness = wish.roughness ?? (wish.law === "hazen-williams" ? 150 : plastic_mm);
  return {
    upstream: Int32Array.from(nodes, (each) => each.upstream),
    length_m: Float64Array.from(nodes, (each) => each.length_m),
    inside_mm: Float64Array.from(nodes, (each) => each.inside_mm),
    law: new Uint8Array(nodes.length).fill(lawCodes[wish.law]),
    roughness: Float64Array.from(nodes, (each) => each.roughness ?? roughness),
    minor: Float64Array.from(nodes, (each) => each.minor ?? 0),
    height_m: Float64Array.from(nodes, (each) => each.height_m ?? 0),
    regulator_m: Float64Array.from(nodes, (each) => each.regulator_m ?? Number.NaN),
    outlet: Int32Array.from(nodes, (each) => each.outlet ?? -1),
    outlets: wish.outlets,
    viscosity_m2ps: wish.viscosity_m2ps ?? 1.004e-6,
  };
}

/** An emitter of so many L/h at 10 m. */
export function createEmitter(flow_lph: number, exponent = 0.5, from_m: number | null = null): EmitterLaw {
  return { kind: "emitter", nominal_lps: flow_lph / 3600, nominalHead_m: from_m ?? 10, exponent, from_m };
}

/** A source that gives one head at any flow. */
export function createSupply(head_m: number): SupplyCurve {
  return { flow_lps: Float64Array.of(0), head_m: Float64Array.of(head_m) };
}

/** A source by points of flow, L/s, and head, m. */
export function createSupplyCurve(points: readonly (readonly [flow_lps: number, head_m: number])[]): SupplyCurve {
  return {
    flow_lps: Float64Array.from(points, ([flow]) => flow),
    head_m: Float64Array.from(points, ([, head]) => head),
  };
}

/** What a drip block is made of. */
export interface BlockWish {
  readonly laterals: number;
  readonly emitters: number;
  readonly main_m?: number;
  readonly mainInside_mm?: number;
  /** Inside diameters of the submain's first, middle and last third. */
  readonly submainInside_mm?: readonly [number, number, number];
  readonly rowSpacing_m?: number;
  readonly emitterSpacing_m?: number;
  readonly hoseInside_mm?: number;
  readonly hoseRoughness?: number;
  /** Rise along the laterals, and along the submain. */
  readonly slope?: readonly [number, number];
}

/** Pipes of a drip block: a main line, a submain with a lateral at every row spacing, emitters (outlet 0) along each. */
export function blockPipes(wish: BlockWish): readonly PipeWish[] {
  const { laterals, emitters } = wish;
  const submainInside_mm = wish.submainInside_mm ?? [57, 45.2, 36.2];
  const rowSpacing_m = wish.rowSpacing_m ?? 2.5;
  const emitterSpacing_m = wish.emitterSpacing_m ?? 1;
  const [along, across] = wish.slope ?? [0, 0];
  const pipes: PipeWish[] = [{ upstream: 0, length_m: wish.main_m ?? 200, inside_mm: wish.mainInside_mm ?? 67.8 }];
  let tee = 1;
  for (let i = 0; i < laterals; i++) {
    const inside_mm = submainInside_mm[Math.min(2, Math.floor((3 * i) / laterals))] ?? 0;
    const teeHeight_m = across * rowSpacing_m * (i + 1);
    pipes.push({ upstream: tee, length_m: rowSpacing_m, inside_mm, height_m: teeHeight_m });
    tee = pipes.length;
    for (let j = 0; j < emitters; j++) {
      pipes.push({
        upstream: j === 0 ? tee : pipes.length,
        length_m: emitterSpacing_m,
        inside_mm: wish.hoseInside_mm ?? 13.8,
        height_m: teeHeight_m + along * emitterSpacing_m * (j + 1),
        outlet: 0,
        ...(wish.hoseRoughness === undefined ? {} : { roughness: wish.hoseRoughness }),
      });
    }
  }
  return pipes;
}

import { type Bore, boreOf } from "./bore.ts";
import { lawCodes } from "./friction-law.ts";
import type { Network } from "./network.ts";
import { type Jet, jetOf } from "./outlet-flow.ts";

/** A network made ready to be solved. */
export interface PreparedNetwork {
  readonly network: Network;
  /** By node, of its pipe. */
  readonly bore: Uint32Array;
  readonly bores: readonly Bore[];
  readonly jets: readonly Jet[];
  readonly hasRegulators: boolean;
  readonly hasMinor: boolean;
  /** A pipe's loss leaps where laminar flow ends. */
  readonly hasLeaps: boolean;
}

/** The network with what its pipes and outlets are worked out from; pipes of one kind share it. */
export function prepareNetwork(network: Network, leap_ratio: number): PreparedNetwork {
  const { inside_mm, law, roughness, regulator_m, minor, viscosity_m2ps } = network;
  const count = inside_mm.length;
  const bore = new Uint32Array(count);
  const bores: Bore[] = [];
  const known = new Map<string, number>();
  let hasRegulators = false;
  let hasMinor = false;
  let kind = -1;
  let last = -1;
  for (let i = 1; i < count; i++) {
    const isSame =
      last > 0 && inside_mm[i] === inside_mm[last] && law[i] === law[last] && roughness[i] === roughness[last];
    if (!isSame) {
      const key = `${inside_mm[i]} ${law[i]} ${roughness[i]}`;
      kind = known.get(key) ?? bores.length;
      if (kind === bores.length) {
        known.set(key, kind);
        bores.push(
          boreOf(
            { law: lawOf(law[i] ?? 0), inside_mm: inside_mm[i] ?? 0, roughness: roughness[i] ?? 0, viscosity_m2ps },
            leap_ratio,
          ),
        );
      }
      last = i;
    }
    bore[i] = kind;
    if (!Number.isNaN(regulator_m[i] ?? Number.NaN)) hasRegulators = true;
    if ((minor[i] ?? 0) !== 0) hasMinor = true;
  }
  return {
    network,
    bore,
    bores,
    jets: network.outlets.map(jetOf),
    hasRegulators,
    hasMinor,
    hasLeaps: bores.some((each) => each.law === 0),
  };
}

function lawOf(code: number) {
  if (code === lawCodes["hazen-williams"]) return lawCodes["hazen-williams"];
  return code === lawCodes.epanet ? lawCodes.epanet : lawCodes["darcy-weisbach"];
}

/** The outlet of a node; undefined where no water leaves. */
export function jetAt({ jets, network }: PreparedNetwork, node: number): Jet | undefined {
  const which = network.outlet[node] ?? -1;
  return which < 0 ? undefined : jets[which];
}

import { condenseLateral } from "../../src/core/hydraulics/condense-lateral.ts";
import { type LawName, lawCodes } from "../../src/core/hydraulics/friction-law.ts";
import type { Network, SupplyCurve } from "../../src/core/hydraulics/network.ts";
import type { EmitterLaw } from "../../src/core/hydraulics/outlet.ts";
import { solveNetwork } from "../../src/core/hydraulics/solve-network.ts";
import { type BlockWish, blockPipes, createEmitter, createNetwork, createSupply } from "../support/create-network.ts";
import { createEpanet, type Epanet, epanetViscosity_m2ps } from "../support/epanet.ts";
import { compared } from "./checks/trees-against-epanet.ts";
import { spoken, table } from "./timing.ts";

// Ours against EPANET (OWA 2.3.5, web assembly) on the same networks, in turns in one process: `node --import tsx tests/bench/hydraulics.ts`.
// Read the ratios, not the times. EPANET's solving alone leaves out writing and opening its file, which its whole job has in it; ours is everything
// from the arrays of the network to heads and flows.

interface Case {
  readonly name: string;
  readonly network: Network;
  /** Heads are compared with these emitters, where EPANET's compensating outlets leak a little above their threshold and those of the network do not. */
  readonly leaking: Network | null;
  readonly supply: SupplyCurve;
  /** How many times faster than EPANET's solving alone, and than its whole job, is wanted. */
  readonly solving: number;
  readonly whole: number | null;
  readonly isLarge: boolean;
}

const small: BlockWish = { laterals: 60, emitters: 60 };
const large: BlockWish = {
  laterals: 400,
  emitters: 150,
  main_m: 300,
  mainInside_mm: 200,
  submainInside_mm: [200, 160, 120],
};
const steep = [0.03, 0.02] as const;

function block(wish: BlockWish, law: LawName, emitter: EmitterLaw): Network {
  return createNetwork(blockPipes(wish), { law, outlets: [emitter], viscosity_m2ps: epanetViscosity_m2ps });
}

function casesOf(size: string, wish: BlockWish, isLarge: boolean, law: "hazen-williams" | "epanet"): readonly Case[] {
  const isHazenWilliams = law === "hazen-williams";
  const solving = isLarge ? (isHazenWilliams ? 8 : 6) : isHazenWilliams ? 12 : 10;
  const name = (what: string) => `${size} ${isHazenWilliams ? "Hazen-Williams" : "Darcy-Weisbach"}, ${what}`;
  const plain = createEmitter(2);
  // Far ends are below the range in the last.
  const compensating = createEmitter(2, 0, 7);
  // Grows as fast as EPANET's leak, 3.34e-4 L/h a metre.
  const leaking = createEmitter(2, 0.0021, 7);
  return [
    {
      name: name("x 0.5"),
      network: block(wish, law, plain),
      leaking: null,
      supply: createSupply(20),
      solving,
      whole: isLarge ? 20 : 40,
      isLarge,
    },
    {
      name: name("starved"),
      network: block({ ...wish, slope: steep }, law, plain),
      leaking: null,
      supply: createSupply(4),
      solving: 4,
      whole: null,
      isLarge,
    },
    {
      name: name("compensating"),
      network: block(wish, law, compensating),
      leaking: block(wish, law, leaking),
      supply: createSupply(20),
      solving: 4,
      whole: null,
      isLarge,
    },
    {
      name: name("compensating, short"),
      network: block(wish, law, compensating),
      leaking: block(wish, law, leaking),
      supply: createSupply(11),
      solving: 4,
      whole: null,
      isLarge,
    },
  ];
}

const epanet = await createEpanet();
const cases = (["hazen-williams", "epanet"] as const).flatMap((law) => [
  ...casesOf("60 x 60", small, false, law),
  ...casesOf("400 x 150", large, true, law),
]);
const rows = cases.map((each) => contest(epanet, each));
console.log("Whole blocks: times are the best of the rounds, ratios how many times faster ours is\n");
console.log(
  table([
    [
      "",
      "nodes",
      "EPANET solving",
      "whole",
      "ours",
      "rounds",
      "dry",
      "solving x",
      "wanted",
      "whole x",
      "wanted",
      "heads off",
    ],
    ...rows,
  ]),
);
console.log("\nRepeated solves with laterals condensed to polynomials, 400 x 150\n");
console.log(condensed(epanet));

function contest(judge: Epanet, { name, network, leaking, supply, solving, whole, isLarge }: Case): readonly string[] {
  const rounds = isLarge ? 5 : 15;
  const times = { solve: Infinity, all: Infinity, ours: Infinity };
  let theirs = judge.solve(network, supply);
  let ours = solveNetwork(network, supply);
  for (let round = 0; round < rounds; round++) {
    theirs = judge.solve(network, supply);
    times.solve = Math.min(times.solve, theirs.solve_ms);
    times.all = Math.min(times.all, theirs.all_ms);
    for (let k = 0; k < (isLarge ? 5 : 20); k++) {
      const begun = performance.now();
      ours = solveNetwork(network, supply);
      times.ours = Math.min(times.ours, performance.now() - begun);
    }
  }
  const { worstHead_m, isJudged } = compared(network, leaking === null ? ours : solveNetwork(leaking, supply), theirs);
  return [
    name,
    String(network.upstream.length),
    spoken(times.solve),
    spoken(times.all),
    spoken(times.ours),
    String(ours.rounds),
    String(ours.dry),
    (times.solve / times.ours).toFixed(1),
    String(solving),
    (times.all / times.ours).toFixed(0),
    whole === null ? "" : String(whole),
    `${worstHead_m.toExponential(1)} m${isJudged ? "" : ", EPANET did not settle"}`,
  ];
}

function condensed(judge: Epanet): string {
  const emitter = createEmitter(2);
  const full = block(large, "hazen-williams", emitter);
  const supply = createSupply(20);
  const at_m = Float64Array.from({ length: large.emitters }, (_, i) => i + 1);
  const begun = performance.now();
  const curves = Array.from({ length: large.laterals }, () =>
    condenseLateral(
      {
        at_m,
        height_m: new Float64Array(large.emitters),
        emitter,
        hoseInside_mm: 13.8,
        law: lawCodes["hazen-williams"],
        roughness: 150,
        barb_m: 0,
        riser_m: 0,
        riserInside_mm: 13.8,
        viscosity_m2ps: epanetViscosity_m2ps,
      },
      8,
      22,
    ),
  );
  const condensing_ms = performance.now() - begun;
  const header = blockPipes({ ...large, emitters: 0 }).map((pipe, i) => (i === 0 ? pipe : { ...pipe, outlet: i - 1 }));
  const network = createNetwork(header, { law: "hazen-williams", outlets: curves });
  let ours_ms = Infinity;
  let ours = solveNetwork(network, supply);
  for (let k = 0; k < 3000; k++) {
    const started = performance.now();
    ours = solveNetwork(network, supply);
    ours_ms = Math.min(ours_ms, performance.now() - started);
  }
  let solve_ms = Infinity;
  let all_ms = Infinity;
  let theirs = judge.solve(full, supply);
  for (let k = 0; k < 4; k++) {
    theirs = judge.solve(full, supply);
    solve_ms = Math.min(solve_ms, theirs.solve_ms);
    all_ms = Math.min(all_ms, theirs.all_ms);
  }
  // Tees: node 1, then one every emitters and one more.
  let off_m = 0;
  for (let i = 0; i < large.laterals; i++) {
    const tee = 2 + i * (large.emitters + 1);
    off_m = Math.max(off_m, Math.abs((ours.head_m[2 + i] ?? Number.NaN) - (theirs.head_m[tee] ?? Number.NaN)));
  }
  return table([
    ["", "time", "solving x (wanted 300)", "whole x", "heads off"],
    ["curves of 400 laterals, once", spoken(condensing_ms), "", "", ""],
    [
      "one solve",
      spoken(ours_ms),
      (solve_ms / ours_ms).toFixed(0),
      (all_ms / ours_ms).toFixed(0),
      `${off_m.toExponential(1)} m`,
    ],
    ["EPANET, all emitters", spoken(solve_ms), "", "", ""],
  ]);
}

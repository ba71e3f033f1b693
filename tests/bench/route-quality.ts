import { gardenJobs, type JobWish, randomRouteJobs, sparseJobs, vineyardJobs } from "../support/random-route-jobs.ts";
import { type Compared, pathsCompared, treeCompared } from "./checks/route-quality.ts";
import { sorted } from "./statistics.ts";
import { table } from "./timing.ts";

// Prints how much longer routes are than exact ones (takes minutes): node --import tsx tests/bench/route-quality.ts [parcels]

const parcels = Number(process.argv[2] ?? 40);
const mostRows = 200;

function told(name: string, compared: readonly Compared[]): readonly string[] {
  const known = compared.filter(({ least_m }) => Number.isFinite(least_m) && least_m > 5);
  const ratios = sorted(known.map(({ ours_m, least_m }) => ours_m / least_m).filter((ratio) => Number.isFinite(ratio)));
  const mean = ratios.reduce((sum, one) => sum + one, 0) / ratios.length;
  const at = (share: number) =>
    (ratios[Math.min(ratios.length - 1, Math.floor(share * ratios.length))] ?? 0).toFixed(4);
  const missed = known.length - ratios.length;
  return [name, String(ratios.length), mean.toFixed(4), at(0.5), at(0.95), at(1), String(missed)];
}

function paths(wish: JobWish, every: number, keepsRows: boolean): readonly Compared[] {
  return randomRouteJobs(parcels, wish, [6, mostRows]).flatMap(({ job }) => pathsCompared(job, every, keepsRows));
}

function trees(keepsRows: boolean): readonly Compared[] {
  return randomRouteJobs(parcels, sparseJobs, [4, 9]).map(({ job }) => treeCompared(job, keepsRows));
}

console.log(`Routes on ${parcels} random parcels of each kind, as times the length of the exact one\n`);
console.log(
  table([
    ["what", "ways", "mean", "median", "95 %", "worst", "missed"],
    told("single ways, gardens, whole distance to rows", paths(gardenJobs, 7, true)),
    told("single ways, gardens, rows as bare lines", paths(gardenJobs, 7, false)),
    told("single ways, vineyards, whole distance to rows", paths(vineyardJobs, 17, true)),
    told("single ways, vineyards, rows as bare lines", paths(vineyardJobs, 17, false)),
    told("trees to 4 to 9 rows, whole distance to rows", trees(true)),
    told("trees to 4 to 9 rows, rows as bare lines", trees(false)),
  ]),
);

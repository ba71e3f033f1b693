import type { Finding } from "../finding.ts";
import { badSetting } from "./findings.ts";
import type { MainLineSettings, WaterPin } from "./project.ts";
import { rowNumbers, rowNumbersWanted } from "./row-numbers.ts";
import type { mainLineSection } from "./schema.ts";
import type { Stated } from "./schema-parts.ts";

/** The main line as stated, over what is usual. Findings: `project/bad-setting` for pins whose rows are no numbers. */
export function mainLineSettings(
  stated: Stated<typeof mainLineSection>,
  usual: MainLineSettings,
): { readonly mainLine: MainLineSettings; readonly findings: readonly Finding[] } {
  const findings: Finding[] = [];
  const pins = stated.pins?.flatMap(({ block, rows, end }, i): WaterPin[] => {
    const numbers = rowNumbers(rows);
    if (numbers !== null) return [{ block: block ?? null, ...numbers, end }];
    findings.push(badSetting(`mainLine.pins.${i}.rows`, `"${rows}"`, rowNumbersWanted));
    return [];
  });
  const mainLine: MainLineSettings = {
    source: stated.source ?? usual.source,
    lane: stated.lane ?? usual.lane,
    postDistance_m: stated.postDistance ?? usual.postDistance_m,
    obstacleDistance_m: stated.obstacleDistance ?? usual.obstacleDistance_m,
    noPlantDistance_m: stated.noPlantDistance ?? usual.noPlantDistance_m,
    boundaryDistance_m: stated.boundaryDistance ?? usual.boundaryDistance_m,
    pins: pins ?? usual.pins,
    trenchPrice_pm: stated.trenchPrice ?? usual.trenchPrice_pm,
    crossingPrice: stated.crossingPrice ?? usual.crossingPrice,
    crossingAs_m: stated.crossingAs ?? usual.crossingAs_m,
  };
  return { mainLine, findings };
}

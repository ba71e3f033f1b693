import type { Finding } from "../finding.ts";
import { pipeSizes } from "../hydraulics/pipe-sizes.ts";
import { badSetting } from "./findings.ts";
import { nearestName } from "./nearest-name.ts";
import type { PipeSettings, TrenchSettings } from "./project.ts";
import type { trenchSection } from "./schema.ts";
import type { Stated } from "./schema-parts.ts";
import { usualCover_m } from "./usual-cover.ts";

type TrenchStated = Stated<typeof trenchSection>;

/** The trench as stated, over what is usual. Findings: `project/bad-setting` for a pipe size that is in no table and states no diameters. */
export function trenchSettings(
  stated: TrenchStated,
  usual: TrenchSettings,
): { readonly trench: TrenchSettings; readonly findings: readonly Finding[] } {
  const { pipe, findings } = pipeSettings(stated.pipe ?? {}, usual.pipe);
  const trench: TrenchSettings = {
    pipe,
    cover_m: stated.cover ?? usualCover_m(pipe.outside_mm),
    frostDepth_m: stated.frostDepth ?? usual.frostDepth_m,
    grade_ratio: stated.grade ?? usual.grade_ratio,
    bedding_m: stated.bedding ?? usual.bedding_m,
    tool: stated.tool ?? usual.tool,
    width_m: stated.width ?? usual.width_m,
    sideSlope_ratio: stated.sideSlope ?? usual.sideSlope_ratio,
    turningRoom_m: stated.turningRoom ?? usual.turningRoom_m,
    dug: stated.dug ?? usual.dug,
    soil: stated.soil ?? usual.soil,
    swell_ratio: stated.swell ?? usual.swell_ratio,
    stationStep_m: stated.stationStep ?? usual.stationStep_m,
    leastLow_m: stated.leastLow ?? usual.leastLow_m,
    dugPerHour_m: stated.dugPerHour ?? usual.dugPerHour_m,
    laidPerHour_m: stated.laidPerHour ?? usual.laidPerHour_m,
    hoursADay_h: stated.hoursADay ?? usual.hoursADay_h,
    people: stated.people ?? usual.people,
    testPressure_kpa: stated.testPressure ?? usual.testPressure_kpa,
    soilBearing_kpa: stated.soilBearing ?? usual.soilBearing_kpa,
  };
  return { trench, findings };
}

/** A size of the tables brings its diameters and how it is joined; what is stated beside it counts more. */
function pipeSettings(
  stated: NonNullable<TrenchStated["pipe"]>,
  usual: PipeSettings,
): { readonly pipe: PipeSettings; readonly findings: readonly Finding[] } {
  const size = stated.size ?? usual.size;
  const known = pipeSizes.find((each) => each.size === size);
  const isOwn = stated.outside !== undefined && stated.inside !== undefined;
  const findings: Finding[] = [];
  if (known === undefined && !isOwn) {
    const near = nearestName(
      size,
      pipeSizes.map((each) => each.size),
    );
    const meant = near === null ? "" : `; did you mean "${near}"`;
    findings.push(
      badSetting("trench.pipe.size", `"${size}"`, `it is in no pipe table, so state outside and inside${meant}`),
    );
  }
  const table = known ?? usual;
  const pipe: PipeSettings = {
    size: known === undefined && !isOwn ? usual.size : size,
    outside_mm: stated.outside ?? table.outside_mm,
    inside_mm: stated.inside ?? table.inside_mm,
    stick_m: stated.stick ?? (known?.joint === "barbed" ? known.stick_m : usual.stick_m),
    joint: stated.joint ?? table.joint,
  };
  return { pipe, findings };
}

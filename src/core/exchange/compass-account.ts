import { type Account, account, input, remark } from "../account.ts";
import { say } from "../finding.ts";
import type { CompassReading } from "./compass-reading.ts";

/** How a compass reading along the rows came about, degrees in [0, 180). */
export function compassAccount(reading: CompassReading, bearing_deg: number): Account {
  return account(
    {
      formula: say`True bearing of the rows less the declination (east of true north counts as more), kept within half a turn. The other way along the row it reads 180° more.`,
      inputs: [
        input("True bearing", "angle", bearing_deg),
        input("Declination", "angle", reading.declination_deg),
        remark("For the day", reading.date),
      ],
      source: "World Magnetic Model 2025, good to about half a degree, without the iron of posts and tractors",
    },
    (true_deg, declination_deg) => (((Number(true_deg) - Number(declination_deg)) % 180) + 180) % 180,
  );
}

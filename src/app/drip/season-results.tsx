import type { BlockSeason, Watering } from "../../core/drip/watering.ts";
import type { WateringJob } from "../../core/drip/watering-job.ts";
import { formatQuantity } from "../../core/units.ts";
import { useStore } from "../store-context.ts";
import { type FigureLine, FigureList } from "../strip/figure-list.tsx";
import { monthNames, monthText } from "./months.ts";

/** What the year asks of the water, block by block: a vine a week and hours by months, when watering begins, what the year takes. */
export function SeasonResults({ job, watering }: { readonly job: WateringJob; readonly watering: Watering }) {
  if (watering.season === null) return null;
  return (
    <section aria-label="Water through the year">
      <h3>Water through the year</h3>
      {job.blocks.map((block, b) => {
        const season = watering.season?.[b];
        return (
          season && (
            <div key={block.id}>
              {job.blocks.length > 1 && <h4>{block.name}</h4>}
              <BlockYear season={season} hasSets={watering.sets.length > 0} name={block.name} />
            </div>
          )
        );
      })}
    </section>
  );
}

interface BlockYearProps {
  readonly season: BlockSeason;
  readonly hasSets: boolean;
  readonly name: string;
}

function BlockYear({ season, hasSets, name }: BlockYearProps) {
  const units = useStore().units.value;
  const volume = (litres: number) => formatQuantity("volume", litres, units, litres < 100 ? 1 : 0);
  const { peak, firstWatering } = season;
  const line = (told: string, value: string, how?: string): FigureLine => ({
    name: told,
    value,
    account: null,
    ...(how !== undefined && { how }),
  });
  const peakMonth = monthNames[peak.month - 1] ?? "";
  return (
    <>
      <FigureList
        lines={[
          line("A grown vine a week, at the peak", volume(peak.peak_lpw), `full need, in ${peakMonth}`),
          line("As it is usually given", volume(peak.usual_lpw), `in ${peakMonth}`),
          line("A young vine a week", volume(peak.young_lpw), `in ${peakMonth}`),
          line(
            "Watering begins",
            firstWatering === null ? "not needed" : monthText(firstWatering),
            "once the soil’s store is used",
          ),
          line("The year, usual", volume(season.usual_l)),
          line("The year, full need", volume(season.full_l)),
        ]}
      />
      <details class="more">
        <summary>Month by month</summary>
        <table class="drip-table">
          <caption class="unseen">Water of {name} by months</caption>
          <thead>
            <tr>
              <th scope="col">Month</th>
              <th scope="col">A vine a week, usual</th>
              <th scope="col">Full need</th>
              <th scope="col">{hasSets ? "All sets, a day" : "A set, a day"}</th>
            </tr>
          </thead>
          <tbody>
            {season.months.map((month) => (
              <tr key={month.month}>
                <th scope="row">{monthNames[month.month - 1]}</th>
                <td>{volume(month.usual_lpw)}</td>
                <td>{volume(month.peak_lpw)}</td>
                <td>
                  {formatQuantity("time", month.usualAll_h, units, 1)}
                  <small>peak {formatQuantity("time", month.all_h, units, 1)}</small>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </details>
    </>
  );
}

import type { Account } from "../../core/account.ts";
import { momentInWords, monthNames } from "../../core/drip/season/months.ts";
import {
  allHoursAccount,
  firstWateringAccount,
  type SeasonShare,
  vineWeekAccount,
  yearAccount,
} from "../../core/drip/season-accounts.ts";
import type { BlockSeason, Watering } from "../../core/drip/watering.ts";
import type { WateringJob } from "../../core/drip/watering-job.ts";
import type { Watered } from "../../core/drip/watering-stage.ts";
import { seasonChartSheet, seasonChartSvg } from "../../core/sheets/season-chart-svg.ts";
import { formatQuantity } from "../../core/units.ts";
import { Figure } from "../figure/figure.tsx";
import { useStore } from "../store-context.ts";
import { type FigureLine, FigureList } from "../strip/figure-list.tsx";
import { ChartPart } from "./chart-part.tsx";

interface SeasonPartProps {
  readonly job: WateringJob;
  readonly watering: Watering;
}

interface SeasonResultsProps {
  readonly watered: Watered;
  /** Of the project. */
  readonly name: string;
}

/** What the year asks of the water, block by block: a vine a week and hours by months, when watering begins, what the year takes. */
export function SeasonResults({ watered, name }: SeasonResultsProps) {
  const units = useStore().units.value;
  const { job, watering } = watered;
  const season = watering?.season ?? null;
  if (watering === null || season === null) return null;
  return (
    <section aria-label="Water through the year">
      <h3>Water through the year</h3>
      {job.blocks.map((block, b) => {
        const own = season[b];
        return (
          own && (
            <div key={block.id}>
              {job.blocks.length > 1 && <h4>{block.name}</h4>}
              <BlockYear job={job} watering={watering} block={b} season={own} />
              <ChartPart
                title={`Water of ${block.name} through the year`}
                file={`${name} season ${block.name}`}
                draw={(width_px) => seasonChartSheet(watered, block.id, { units, width_px })}
                whole={() => seasonChartSvg(watered, block.id, name, { units })}
              />
              <MonthByMonth job={job} watering={watering} block={b} season={own} />
            </div>
          )
        );
      })}
    </section>
  );
}

interface BlockYearProps extends SeasonPartProps {
  readonly block: number;
  readonly season: BlockSeason;
}

function useVolume(): (litres: number) => string {
  const units = useStore().units.value;
  return (litres) => formatQuantity("volume", litres, units, litres === 0 ? 0 : litres < 400 ? 1 : 0);
}

function BlockYear({ job, watering, block, season }: BlockYearProps) {
  const volume = useVolume();
  const { peak, firstWatering } = season;
  const when = `in ${monthNames[peak.month - 1] ?? ""}`;
  const line = (name: string, value: string, how: string | null, account: () => Account): FigureLine => ({
    name,
    value,
    account,
    ...(how !== null && { how }),
  });
  const vine = (of: SeasonShare) => () => vineWeekAccount(job, watering, block, peak.month, of);
  return (
    <FigureList
      lines={[
        line("A grown vine a week, at the peak", volume(peak.peak_lpw), when, vine("peak")),
        line("As it is usually given", volume(peak.usual_lpw), when, vine("usual")),
        line("A young vine a week", volume(peak.young_lpw), when, vine("young")),
        line(
          "Watering begins",
          firstWatering === null ? "not needed" : momentInWords(firstWatering),
          "once the soil’s store is used",
          () => firstWateringAccount(job),
        ),
        line("The year, as usual", volume(season.usual_l), null, () => yearAccount(season, "usual")),
        line("The year, at the peak share", volume(season.full_l), null, () => yearAccount(season, "peak")),
      ]}
    />
  );
}

function MonthByMonth({ job, watering, block, season }: BlockYearProps) {
  const units = useStore().units.value;
  const volume = useVolume();
  const name = job.blocks[block]?.name ?? "";
  const hasSets = watering.sets.length > 0;
  const hours = (time_h: number) => formatQuantity("time", time_h, units, time_h < 1 ? 0 : 1);
  const week = (month: number, of: SeasonShare) => () => vineWeekAccount(job, watering, block, month, of);
  return (
    <details class="more">
      <summary>Month by month</summary>
      <table class="drip-table">
        <caption class="unseen">Water of {name} by months</caption>
        <thead>
          <tr>
            <th scope="col">Month</th>
            <th scope="col">A vine a week</th>
            <th scope="col">{hasSets ? "All sets, a day" : "A set, a day"}</th>
          </tr>
        </thead>
        <tbody>
          {season.months.map(({ month, usual_lpw, peak_lpw, usualAll_h, all_h }) => (
            <tr key={month}>
              <th scope="row">{monthNames[month - 1]}</th>
              <td>
                <Figure
                  value={volume(usual_lpw)}
                  label={`usual, ${monthNames[month - 1]}`}
                  account={week(month, "usual")}
                />
                {peak_lpw > 0 && <small>peak {volume(peak_lpw)}</small>}
              </td>
              <td>
                {hasSets ? (
                  <Figure
                    value={hours(usualAll_h)}
                    label={`all sets a day, usual, ${monthNames[month - 1]}`}
                    account={() => allHoursAccount(job, watering, watering.season ?? [], month, "usual")}
                  />
                ) : (
                  hours(usualAll_h)
                )}
                {all_h > 0 && <small>peak {hours(all_h)}</small>}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}

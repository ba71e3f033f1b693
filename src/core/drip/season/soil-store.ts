/** A month of the season as the soil meets it, mm over the ground of the vines. */
export interface SoilMonth {
  /** 1 to 12. */
  readonly month: number;
  /** The part of it in leaf: months with parts, past 13 in the year after. */
  readonly from: number;
  readonly to: number;
  /** Full need, and rain that reaches the roots. */
  readonly need_mm: number;
  readonly rain_mm: number;
}

/** What has to be given in a month. */
export interface GivenMonth {
  readonly month: number;
  readonly usual_mm: number;
  readonly peak_mm: number;
  readonly young_mm: number;
  /** Of the need, from the soil's store. */
  readonly fromSoil_mm: number;
  readonly need_mm: number;
  readonly rain_mm: number;
  /** The part of it in leaf, as of the soil's month. */
  readonly from: number;
  readonly to: number;
  /** The part of the month in leaf that is watered: not that in which the soil's store lasts. */
  readonly watered_ratio: number;
}

export interface GivenSeason {
  readonly months: readonly GivenMonth[];
  /** When the soil's store is used up, months with parts; null: never. */
  readonly firstWatering: number | null;
}

/** Shares of the full need. */
export interface Shares {
  readonly usual: number;
  readonly peak: number;
  readonly young: number;
}

/**
 * What has to be given month after month, mm, from bud break on. The soil begins full. Rain goes first; what vines need above it comes out of
 * the soil, and rain above it fills the soil up again. When the soil's store is used up within a month, the rest of that month is watered: its
 * share of the need less rain. Young vines have their share of the need less rain, for their roots are not down in the store yet.
 */
export function givenBySoil(months: readonly SoilMonth[], store_mm: number, shares: Shares): GivenSeason {
  let left_mm = store_mm;
  let firstWatering: number | null = null;
  const given = months.map(({ month, from, to, need_mm, rain_mm }): GivenMonth => {
    const drawn_mm = need_mm - rain_mm;
    const lasts = drawn_mm <= left_mm ? 1 : left_mm / drawn_mm;
    const fromSoil_mm = Math.max(0, Math.min(left_mm, drawn_mm));
    left_mm = Math.min(store_mm, Math.max(0, left_mm - drawn_mm));
    if (lasts < 1 && firstWatering === null) firstWatering = from + lasts * (to - from);
    const share = (of: number) => Math.max(0, of * need_mm - rain_mm);
    return {
      month,
      usual_mm: (1 - lasts) * share(shares.usual),
      peak_mm: (1 - lasts) * share(shares.peak),
      young_mm: share(shares.young),
      fromSoil_mm,
      need_mm,
      rain_mm,
      from,
      to,
      watered_ratio: 1 - lasts,
    };
  });
  return { months: given, firstWatering };
}

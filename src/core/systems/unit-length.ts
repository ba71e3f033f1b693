/** Metres in one of each; the survey foot is 1200/3937 m (calculation handbook, section 0.1). */
export const unitLength_m: Readonly<Record<"m" | "ft" | "us-ft", number>> = { m: 1, ft: 0.3048, "us-ft": 1200 / 3937 };

/** Days of the months, January first. */
export const monthDays: readonly number[] = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/** Day of the year of the fifteenth of a month, 1 to 12. */
export function midMonthDay(month: number): number {
  return monthDays.slice(0, month - 1).reduce((sum, days) => sum + days, 15);
}

/** Value of a month, 1 to 12, where the year goes round: 0 is December, 13 January. */
export function ofMonth(monthly: readonly number[], month: number): number {
  return monthly[(((month - 1) % 12) + 12) % 12] ?? 0;
}

export const monthNames: readonly string[] = [
  "January",
  "February",
  "March",
  "April",
  "May",
  "June",
  "July",
  "August",
  "September",
  "October",
  "November",
  "December",
];

/** A moment in months with parts from 1, as people say it: "12 May". */
export function momentInWords(month: number): string {
  const whole = Math.floor(month);
  const day = Math.min(ofMonth(monthDays, whole), Math.floor((month - whole) * ofMonth(monthDays, whole)) + 1);
  return `${day} ${monthNames[(whole - 1) % 12] ?? ""}`;
}

// Made once: making a format costs more than using it.
const format = new Intl.NumberFormat("en-US", { minimumFractionDigits: 2, maximumFractionDigits: 2 });

/** An amount of money as the person writes it: "$1,234.50", "1,234.50 EUR"; without a currency the number alone. */
export function money(amount: number, currency: string | null): string {
  const number = format.format(amount);
  if (currency === null) return number;
  return /^[^\p{L}\p{N}]$/u.test(currency) ? `${currency}${number}` : `${number} ${currency}`;
}

/** The amount that was typed, with a decimal point or comma; null when it is none. */
export function typedMoney(typed: string): number | null {
  const bare = typed.trim().replace(/(?<=\d),(?=\d{3}(?!\d))/g, "");
  return /^\d+([.,]\d+)?$/.test(bare) ? Number(bare.replace(",", ".")) : null;
}

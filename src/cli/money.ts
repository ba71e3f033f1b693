/** An amount of money with two decimals and the person's own word for the currency. */
export function money(amount: number, currency: string | null): string {
  const text = amount.toLocaleString("en-US", { minimumFractionDigits: 2, maximumFractionDigits: 2 });
  return currency === null ? text : `${text} ${currency}`;
}

/** Text as a terminal may show it: names out of a file cannot move the cursor, colour the screen or turn the reading direction. */
export function printable(text: string): string {
  return text.replace(/[\p{Cc}\u200e\u200f\u202a-\u202e\u2066-\u2069]/gu, (sign) => (sign === "\n" ? sign : "\ufffd"));
}

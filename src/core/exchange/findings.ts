import { type Finding, say } from "../finding.ts";

/** A price list that cannot be read at all. */
export function priceListUnreadable(reason: string): Finding {
  return {
    code: "exchange/price-list-unreadable",
    severity: "error",
    at: null,
    feature: null,
    message: say`The price list cannot be read: ${reason}.`,
    reason: say`Nothing of it was taken.`,
    remedy: say`Write the price list of the plan to a file, fill in its prices, and read that.`,
  };
}

/** Lines of a price list that say what cannot be taken; `places` are "line 3" or "entry 3", `what` is half a sentence. */
export function priceListLinesWrong(places: readonly string[], what: string): Finding {
  return {
    code: "exchange/price-list-line-wrong",
    severity: "error",
    at: null,
    feature: null,
    message: say`Price list, ${listed(places)}: ${what}.`,
    reason: say`Nothing of the list was taken, so that no line goes missing unseen.`,
    remedy: say`Correct what is named, and read the list again.`,
  };
}

/** A package that a price list has twice. */
export function priceListTwice(packages: readonly string[]): Finding {
  return {
    code: "exchange/price-list-twice",
    severity: "warning",
    at: null,
    feature: null,
    message: say`The price list has more than one line for ${listed(packages)}.`,
    reason: say`The last one holds.`,
    remedy: say`Keep one line for each package size of an article.`,
  };
}

function listed(names: readonly string[]): string {
  const most = 5;
  const shown = names.slice(0, most).join(", ");
  return names.length > most ? `${shown} and ${names.length - most} more` : shown;
}

/** Texts that do not fit into a cell of a workbook. */
export function textsCut(count: number, example: string, most: number): Finding {
  return {
    code: "exchange/texts-cut",
    severity: "warning",
    at: null,
    feature: null,
    message:
      count === 1
        ? say`One text is cut to ${most} letters: "${example}…".`
        : say`${count} texts are cut to ${most} letters, such as "${example}…".`,
    reason: say`A cell of a workbook holds no more; office programs mend a file with longer ones by leaving things out.`,
    remedy: say`Give it a shorter name or note, or hand it over as CSV.`,
  };
}

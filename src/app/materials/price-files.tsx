import { useRef, useState } from "preact/hooks";
import type { Plan } from "../../core/plan.ts";
import { text } from "../../core/units.ts";
import { takePriceList } from "../commands/take-price-list.ts";
import { download, fileStem } from "../download.ts";
import { FileInput } from "../file-input.tsx";
import { useStore } from "../store-context.ts";
import { count } from "../strip/count.ts";

type Told = { readonly kind: "taken" | "refused"; readonly sentences: readonly string[] };

/** The price list leaves as a table to be filled in, and comes back from one. */
export function PriceFiles({ plan }: { readonly plan: Plan }) {
  const store = useStore();
  const units = store.units.value;
  const input = useRef<HTMLInputElement>(null);
  const [told, setTold] = useState<Told | null>(null);
  const take = async (file: File): Promise<void> => {
    const taken = await takePriceList(store, file);
    const sentences = taken.findings.map(({ message, remedy }) => `${text(message, units)} ${text(remedy, units)}`);
    setTold(
      taken.prices === null
        ? { kind: "refused", sentences: [`${file.name} was not taken; the prices are as they were.`, ...sentences] }
        : {
            kind: "taken",
            sentences: [`${count(taken.prices, "package")} from ${file.name} now are the price list.`, ...sentences],
          },
    );
  };
  const save = async (as: "csv" | "json"): Promise<void> => {
    const { priceListCsv, priceListJson } = await import("../../core/exchange/price-list.ts");
    const stem = `${fileStem(plan.project.name)}-prices`;
    if (as === "csv") download(`${stem}.csv`, priceListCsv(plan), "text/csv; charset=utf-8; header=present");
    else download(`${stem}.json`, priceListJson(plan), "application/json");
  };
  return (
    <>
      <h3>Price list as a file</h3>
      <p class="aside">
        A line for everything that is needed and every size it is sold in. Fill in the prices with a spreadsheet and
        open it again; an empty price is not priced.
      </p>
      <div class="price-files">
        <button type="button" onClick={() => void save("csv")}>
          Save the price list <small>CSV</small>
        </button>
        <button type="button" onClick={() => void save("json")}>
          Save the price list <small>JSON</small>
        </button>
        <button type="button" onClick={() => input.current?.click()}>
          Open a price list
        </button>
      </div>
      <FileInput field={input} accept={".csv,.txt,.json,text/csv,application/json"} take={(file) => void take(file)} />
      <div role="status">
        {told && (
          <ul class={told.kind === "refused" ? "price-told refused" : "price-told"}>
            {told.sentences.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        )}
      </div>
    </>
  );
}

import type { MaterialLine } from "../../core/materials/material-line.ts";
import { usualSizes } from "../../core/materials/sizes.ts";
import type { Plan } from "../../core/plan.ts";
import type { PriceEntry } from "../../core/project/project.ts";
import { formatQuantity, parseQuantity } from "../../core/units.ts";
import { addPackage, changePackage, hasPackages, removePackage } from "../commands/change-prices.ts";
import type { StepName } from "../commands/edit.ts";
import { useStore } from "../store-context.ts";
import { grouped } from "../strip/count.ts";
import { Field } from "../strip/field.tsx";
import { withShownUnit } from "../typed-quantity.ts";
import { sizeText } from "./line-text.ts";
import { money, typedMoney } from "./money.ts";

interface PackageFieldsProps {
  readonly plan: Plan;
  readonly line: MaterialLine;
  readonly name: string;
}

/** How an article is sold: a line a package size, with its price and mass. */
export function PackageFields({ plan, line, name }: PackageFieldsProps) {
  const store = useStore();
  const units = store.units.value;
  const { article, unit } = line;
  const own = plan.project.materials.prices.filter((entry) => entry.article === article);
  const sizes = usualSizes(line.kind, plan.project.materials);
  const packages: readonly PriceEntry[] =
    own.length > 0 ? own : sizes.map((size) => ({ article, size, price: null, mass_kg: null, note: null }));
  const isOwn = hasPackages(store, article);
  const addSize = (): void => {
    const largest = packages.reduce((most, { size }) => Math.max(most, size), 0);
    const size = largest > 0 ? 2 * largest : 1;
    addPackage(store, article, sizes, size, { name: `Another package of ${name}` });
  };
  return (
    <>
      <h4>How it is sold</h4>
      <table class="packages">
        <caption class="unseen">Packages of {name}</caption>
        <thead>
          <tr>
            <th scope="col">{unit === "m" ? "Coil of" : "Package of"}</th>
            <th scope="col">Price</th>
            <th scope="col">Mass</th>
            <td />
          </tr>
        </thead>
        <tbody>
          {packages.map((entry, at) => (
            // A package has no name of its own; its place in the list is what the file knows it by.
            <tr key={`${at} of ${packages.length}`}>
              <PackageCells entry={entry} at={at} line={line} sizes={sizes} name={name} />
              <td>
                {isOwn && (
                  <button
                    type="button"
                    class="quiet-button"
                    aria-label={`Take out the package of ${sizeText(entry.size, unit, units)}`}
                    title="Take out"
                    onClick={() =>
                      removePackage(store, article, at, {
                        name: `Take out ${sizeText(entry.size, unit, units)} of ${name}`,
                      })
                    }
                  >
                    ×
                  </button>
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <button type="button" class="quiet-button" onClick={addSize}>
        Another size
      </button>
    </>
  );
}

interface PackageCellsProps {
  readonly entry: PriceEntry;
  readonly at: number;
  readonly line: MaterialLine;
  readonly sizes: readonly number[];
  readonly name: string;
}

function PackageCells({ entry, at, line, sizes, name }: PackageCellsProps) {
  const store = useStore();
  const units = store.units.value;
  const { article, unit } = line;
  const size = sizeText(entry.size, unit, units);
  const { currency } = store.shownPlan.value?.project.materials ?? { currency: null };
  const steps = (told: string, joins: string): StepName => ({ name: `${told}: ${name}`, joins });

  const applySize = (typed: string, joins: string) => {
    if (unit === "pieces") {
      const bare = typed
        .trim()
        .replace(/(?<=\d),(?=\d{3})/g, "")
        .replace(/ pieces?$/, "");
      if (!/^[1-9]\d{0,6}$/.test(bare)) return `“${typed}” was not understood: a whole number is wanted.`;
      return changePackage(store, article, sizes, at, "size", Number(bare), steps(`Package of ${bare}`, joins));
    }
    const meant = withShownUnit(typed, "length", entry.size, units);
    const parsed = parseQuantity("length", meant);
    if (!parsed.ok) return `“${typed}” was not understood: ${parsed.reason}.`;
    if (parsed.value <= 0) return "A package holds something.";
    const told = `Package of ${formatQuantity("length", parsed.value, units)}`;
    return changePackage(store, article, sizes, at, "size", meant, steps(told, joins));
  };
  const applyPrice = (typed: string, joins: string) => {
    if (typed.trim() === "") {
      return changePackage(store, article, sizes, at, "price", null, steps("Not priced", joins));
    }
    const price = typedMoney(typed);
    if (price === null) return "Write the number alone; the currency is written once, below. Empty is not priced.";
    return changePackage(store, article, sizes, at, "price", price, steps(`Price ${money(price, currency)}`, joins));
  };
  const applyMass = (typed: string, joins: string) => {
    if (typed.trim() === "") {
      return changePackage(store, article, sizes, at, "mass", null, steps("Mass not known", joins));
    }
    const meant = withShownUnit(typed, "mass", entry.mass_kg ?? 1, units);
    const parsed = parseQuantity("mass", meant);
    if (!parsed.ok) return `“${typed}” was not understood: ${parsed.reason}.`;
    const told = `Mass ${formatQuantity("mass", parsed.value, units)}`;
    return changePackage(store, article, sizes, at, "mass", meant, steps(told, joins));
  };
  return (
    <>
      <td>
        <Field
          label={`Size of package ${at + 1}`}
          shown={unit === "m" ? size : grouped(entry.size)}
          apply={applySize}
          isCompact
        />
      </td>
      <td>
        <Field
          label={`Price of ${size}`}
          shown={entry.price === null ? "" : money(entry.price, null)}
          apply={applyPrice}
          isCompact
        />
      </td>
      <td>
        <Field
          label={`Mass of ${size}`}
          shown={entry.mass_kg === null ? "" : formatQuantity("mass", entry.mass_kg, units)}
          apply={applyMass}
          isCompact
        />
      </td>
    </>
  );
}

import { formatQuantity, type Materials, type Plan, text, type UnitSystem } from "../core/index.ts";
import { countOf } from "./count-of.ts";
import { wrapped } from "./wrapped.ts";

type CoilWork = Materials["coils"][number];
type Answer = NonNullable<NonNullable<CoilWork["plan"]>["noJoins"]>;

/** How many coils each article takes, with the bound that says how far from the best that can be. Empty when nothing is cut. */
export function coilReport(plan: Plan, units: UnitSystem): string {
  const coils = plan.materials?.coils ?? [];
  if (coils.length === 0) return "";
  const said = coils.flatMap((work) => (work.plan === null ? [] : [wrapped(sentence(plan, work, units), "")]));
  return [...said, "Which coil gives which run: tautrow export FILE --of coils --as csv\n"].join("");
}

function sentence(plan: Plan, { job, plan: cut }: CoilWork, units: UnitSystem): string {
  const line = plan.materials?.lines.find(({ article }) => article === job.article);
  const name =
    line === undefined ? job.article : [line.item, text(line.spec, units)].filter((part) => part !== "").join(" ");
  const chosen = cut?.chosen ?? null;
  const answer = chosen === null ? null : (cut?.[chosen] ?? null);
  if (answer === null) return `${name}: cannot be cut from the coils there are.`;
  const other = chosen === "noJoins" ? cut?.fewestCoils : cut?.noJoins;
  const also =
    other === null || other === undefined
      ? ""
      : ` ${chosen === "noJoins" ? "With joins" : "Without joins"} it would be ${boughtText(other, units)}${joinsText(other)}.`;
  return `${name}: ${boughtText(answer, units)}${joinsText(answer)}; ${boundText(answer)}.${also}`;
}

function boughtText({ bought, coils }: Answer, units: UnitSystem): string {
  const onHand = coils.filter(({ isOnHand }) => isOnHand).length;
  const parts = [
    ...bought.map(({ length_m, count }) => `${countOf(count, "coil")} of ${formatQuantity("length", length_m, units)}`),
    ...(onHand > 0 ? [`${countOf(onHand, "coil")} on hand`] : []),
  ];
  return parts.length === 0 ? "nothing to buy" : parts.join(" and ");
}

function joinsText({ joins }: Answer): string {
  return joins === 0 ? ", no join" : `, ${countOf(joins, "join")}`;
}

const proofs = {
  length: "by length",
  pairs: "by which runs can share a coil",
  "linear-program": "even if coils could be shared out in fractions",
  search: "by a full search",
} as const;

/** In honest words: what is proven, and by what. */
function boundText({ bound, isOptimal, boughtCount }: Answer): string {
  if (boughtCount === 0) return "nothing less is possible";
  const least = `at least ${bound.coils.toLocaleString("en-US")} ${proofs[bound.by]}`;
  return isOptimal ? `${least}, so nothing better exists` : `${least}; whether less would do is not proven`;
}

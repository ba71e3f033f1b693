import { waterEndsAccount } from "../../core/mainline/accounts.ts";
import type { Route } from "../../core/mainline/route.ts";
import {
  crossingsAccount,
  routeCostAccount,
  routeGroundLengthAccount,
  routeLengthAccount,
  teesAccount,
} from "../../core/mainline/route-accounts.ts";
import { routeCost } from "../../core/mainline/route-cost.ts";
import type { Plan } from "../../core/plan.ts";
import { formatQuantity } from "../../core/units.ts";
import { money } from "../materials/money.ts";
import { useStore } from "../store-context.ts";
import { count, grouped } from "../strip/count.ts";
import { type FigureLine, FigureList } from "../strip/figure-list.tsx";

/** How long the main line is, what it meets and what it costs; which end of each row it gets to. */
export function RouteFigures({ plan }: { readonly plan: Plan }) {
  const { mainline, project } = plan;
  const route = mainline?.route ?? null;
  const own = useLines(plan, route);
  if (!mainline) return null;
  const of = (end: "start" | "end") => mainline.waterEnd.filter((each) => each === end).length;
  const ends = (["start", "end"] as const).map(
    (end): FigureLine => ({
      name: `Water at the ${end}`,
      value: count(of(end), "row"),
      account: () => waterEndsAccount(mainline, end, project.sources),
    }),
  );
  return <FigureList lines={[...own, ...ends]} />;
}

function useLines({ trench, project, materials }: Plan, route: Route | null): readonly FigureLine[] {
  const units = useStore().units.value;
  if (route === null) return [];
  const length = (value_m: number) => formatQuantity("length", value_m, units);
  const { mainLine } = project;
  const ground_m = trench?.groundLength_m ?? null;
  const article = trench?.parts.find(({ kind }) => kind === "main-pipe")?.article;
  const pipe = materials?.lines.find((line) => line.article === article)?.price ?? null;
  const cost = routeCost(route, mainLine, pipe);
  return [
    { name: "Main line", how: "on the level", value: length(route.length_m), account: () => routeLengthAccount(route) },
    ground_m === null
      ? { name: "Along the ground", how: "no heights known for all of it", value: "not known", account: null }
      : {
          name: "Along the ground",
          value: length(ground_m),
          account: () => routeGroundLengthAccount(route, ground_m),
        },
    {
      name: "Row tees",
      value: grouped(route.waterEnd.length - route.unreached.length),
      account: () => teesAccount(route),
    },
    { name: "Crossings", value: grouped(route.crossings), account: () => crossingsAccount(route) },
    cost.price === null
      ? { name: "Cost", how: "trench, crossings and pipe", value: "not priced", account: null }
      : {
          name: "Cost",
          how: cost.pipe === null ? "trench and crossings; the pipe is not priced" : "trench, crossings and pipe",
          value: money(cost.price, project.materials.currency),
          account: () => routeCostAccount(route, mainLine, cost),
        },
  ];
}

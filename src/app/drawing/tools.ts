import type { Tool } from "./drawing-state.ts";

/** One line of the palette: what can be drawn, and in which shapes. */
export interface Choice {
  readonly label: string;
  readonly hint: string;
  readonly tools: readonly (Tool & { readonly button: string })[];
}

const tool = (
  role: Tool["role"],
  shape: Tool["shape"],
  label: string,
  button: string,
  isWalked = false,
): Choice["tools"][number] => ({ role, shape, label, button, isWalked });

/** Everything that can be drawn, in the order in which ground is taken up. */
export const choices: readonly Choice[] = [
  {
    label: "Parcel",
    hint: "the outline of your ground",
    tools: [
      tool("parcel", "area", "Parcel", "Corner by corner"),
      tool("parcel", "area", "Walked parcel", "Walk it with this device", true),
    ],
  },
  {
    label: "Hole in a parcel",
    hint: "ground inside it that is not yours to plant",
    tools: [tool("hole", "area", "Hole", "Area")],
  },
  {
    label: "Obstacle",
    hint: "well, oak, rock, shed",
    tools: [
      tool("obstacle", "point", "Obstacle", "Spot"),
      tool("obstacle", "line", "Obstacle line", "Line"),
      tool("obstacle", "area", "Obstacle area", "Area"),
    ],
  },
  {
    label: "No-plant",
    hint: "stream, fence, power line, road",
    tools: [tool("no-plant", "line", "No-plant line", "Line"), tool("no-plant", "area", "No-plant area", "Area")],
  },
  {
    label: "Cross alley",
    hint: "left open across the rows for machines",
    tools: [
      tool("cross-alley", "line", "Cross alley", "Line"),
      tool("cross-alley", "area", "Cross alley area", "Area"),
    ],
  },
  {
    label: "Block",
    hint: "where the planting that is shown lies, when it is not the whole parcel",
    tools: [tool("block", "area", "Block", "Area")],
  },
  {
    label: "Row that stands",
    hint: "from end post to end post",
    tools: [tool("row", "line", "Row that stands", "Two posts")],
  },
  {
    label: "Mark",
    hint: "a permanent point to measure from",
    tools: [tool("mark", "point", "Mark", "Spot")],
  },
  {
    label: "Water source",
    hint: "well, tank, meter",
    tools: [tool("source", "point", "Water source", "Spot")],
  },
  {
    label: "Main line",
    hint: "where the water pipe runs",
    tools: [tool("main-line", "line", "Main line", "Line")],
  },
  {
    label: "Spot height",
    hint: "a place whose height you know",
    tools: [tool("elevation", "point", "Spot height", "Spot")],
  },
];

/** The tool that measures and leaves no trace. */
export const measureTool: Tool = { role: "measure", shape: "area", label: "Measure", isWalked: false };

/** The tool for the outline of the ground. */
export const parcelTool: Tool = { role: "parcel", shape: "area", label: "Parcel", isWalked: false };

/** How many corners a drawing needs, and how many end it by themselves. */
export function cornersOf({ role, shape }: Tool): { readonly least: number; readonly most: number } {
  if (shape === "point") return { least: 1, most: 1 };
  if (role === "measure") return { least: 2, most: Number.POSITIVE_INFINITY };
  if (role === "row") return { least: 2, most: 2 };
  return { least: shape === "area" ? 3 : 2, most: Number.POSITIVE_INFINITY };
}

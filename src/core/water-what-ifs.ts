import type { Block, Project } from "./project/project.ts";
import { si } from "./project/si.ts";
import type { PipeFamily, ValvePattern } from "./project/water-settings.ts";
import { blockPath } from "./project/wires-as-written.ts";
import type { WhatIf } from "./what-if.ts";

/** Flows closer than this, L/h, are one. */
const sameFlow_lph = 1e-3;

/** Changes of the drip of a block, and of valves and pipes for all: those that would change nothing are left out. */
export function waterWhatIfs(project: Project, block: Block): readonly WhatIf[] {
  return [
    ...emitterFlows(project, block),
    ...emittersAtVine(project, block),
    ...patterns(project),
    ...families(project),
  ];
}

function emitterFlows(project: Project, { id, drip }: Block): readonly WhatIf[] {
  const flows =
    project.units === "us"
      ? (["0.4 gal/h", "0.5 gal/h", "0.6 gal/h", "1 gal/h"] as const)
      : (["1.2 L/h", "1.6 L/h", "2 L/h", "4 L/h"] as const);
  return flows.flatMap((flow) =>
    Math.abs(si("flow", flow) - drip.emitterFlow_lph) < sameFlow_lph
      ? []
      : [
          {
            id: `emitters-${flow.replace(" gal/h", "gph").replace(" L/h", "lph")}`,
            name: `emitters of ${flow}`,
            edits: [[blockPath(project, id, "drip.emitterFlow"), flow] as const],
          },
        ],
  );
}

/** One at every vine, or two; hose with emitters built in has them where they are. */
function emittersAtVine(project: Project, { id, drip }: Block): readonly WhatIf[] {
  if (drip.emitterPlacing === "in-line") return [];
  return ([1, 2] as const).flatMap((count) =>
    drip.emittersPerVine === count
      ? []
      : [
          {
            id: count === 1 ? "one-emitter" : "two-emitters",
            name: count === 1 ? "one emitter at every vine" : "two emitters at every vine",
            edits: [[blockPath(project, id, "drip.emittersPerVine"), count] as const],
          },
        ],
  );
}

const patternNames: Readonly<Record<ValvePattern, string>> = {
  "cock-a-row": "a cock on every row",
  "valve-a-set": "a valve and a submain for every set",
  "valves-at-source": "valves at the source and a pipe for every set",
};

/** Without water there are no sets to open and shut. */
function patterns({ sources, water, sets }: Project): readonly WhatIf[] {
  if (sources.length === 0 || water.kind === "unknown") return [];
  return (["cock-a-row", "valve-a-set", "valves-at-source"] as const)
    .filter((pattern) => pattern !== sets.pattern)
    .map((pattern) => ({ id: pattern, name: patternNames[pattern], edits: [["sets.pattern", pattern]] }));
}

const familyNames: Readonly<Record<PipeFamily, string>> = {
  "pvc-40": "pipe of PVC Schedule 40",
  "pvc-sdr21": "pipe of PVC SDR 21",
  "pvc-sdr26": "pipe of PVC SDR 26",
  "pvc-pn10": "pipe of PVC for 10 bar",
  "pvc-pn6": "pipe of PVC for 6 bar",
  "pe100-sdr17": "pipe of PE 100 SDR 17",
};

/** Only where sizes are chosen: else every pipe is as it is set. */
function families({ sources, water, sets, units }: Project): readonly WhatIf[] {
  if (sources.length === 0 || water.kind === "unknown" || sets.sizing !== "chosen") return [];
  const sold =
    units === "us"
      ? (["pvc-40", "pvc-sdr21", "pvc-sdr26"] as const)
      : (["pvc-pn10", "pvc-pn6", "pe100-sdr17"] as const);
  return sold
    .filter((family) => family !== sets.family)
    .map((family) => ({ id: `pipe-${family}`, name: familyNames[family], edits: [["sets.family", family]] }));
}

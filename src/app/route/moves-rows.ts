import type { Project } from "../../core/project/project.ts";

/** Does an edit touch anything that rows depend on? Told by identity: edits keep what they do not touch. */
export function movesRows(before: Project, after: Project): boolean {
  const parts = ({ frameOrigin, parcels, edges, keepOuts, crossAlleys, blockAreas, ...rest }: Project) => [
    frameOrigin?.join(),
    parcels,
    edges,
    keepOuts,
    crossAlleys,
    blockAreas,
    rest.givenRows,
    rest.keptPlaces,
    rest.ground,
    rest.blocks,
  ];
  const now = parts(after);
  return parts(before).some((part, i) => part !== now[i]);
}

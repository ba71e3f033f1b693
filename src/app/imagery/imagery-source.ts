/** Name of the tiles' source and layer on the map. */
export const imagerySource = "imagery";

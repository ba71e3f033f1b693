/** A lift past this needs two people or a machine, kg: the load constant of the NIOSH lifting equation (calculation handbook, section 9). */
export const mostLift_kg = 23;

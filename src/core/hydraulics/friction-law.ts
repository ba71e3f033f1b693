/**
 * A law of friction as a number, for arrays of pipes.
 * 0 Darcy-Weisbach, laminar below Re 2000 and Blasius above; 1 Hazen-Williams; 2 Darcy-Weisbach as EPANET has it (Swamee-Jain from Re 4000, a
 * cubic between 2000 and 4000).
 */
export const lawCodes = { "darcy-weisbach": 0, "hazen-williams": 1, epanet: 2 } as const;
export type LawName = keyof typeof lawCodes;
export type LawCode = (typeof lawCodes)[LawName];

import type { Phrase } from "../finding.ts";
import type { MaterialKind, SpareRule } from "./catalog.ts";

/** A package size of an article and how many of it are bought. */
export interface Pack {
  /** Metres or pieces, in the unit of the line. */
  readonly size: number;
  readonly count: number;
  /** Of one package; null: not priced. */
  readonly price: number | null;
  readonly mass_kg: number | null;
}

/** One line of the shopping list. */
export interface MaterialLine {
  /** What price lists and stock call it: "wire-13ga". */
  readonly article: string;
  readonly kind: MaterialKind;
  /** What to ask for, such as "Wire". */
  readonly item: string;
  /** Which one: thickness, length, kind; may be empty. */
  readonly spec: Phrase;
  readonly unit: "m" | "pieces";
  /** True when it serves rows together and they share it evenly. */
  readonly isShared: boolean;
  /** What the structure takes, without spare; pieces are whole. */
  readonly needed: number;
  readonly spare: number;
  /** Where the spare is from. */
  readonly spareBy: SpareRule;
  /** Needed and spare together. */
  readonly quantity: number;
  /** Of it, what is there already. */
  readonly onHand: number;
  /** What packages have to cover: for wire and hose what the coils that are bought hold. */
  readonly toBuy: number;
  /** Largest first; things sold by the piece have packages of 1. */
  readonly packs: readonly Pack[];
  /** Total; null: not priced. */
  readonly price: number | null;
  /** Total; null: not known. */
  readonly mass_kg: number | null;
  /** A package that two people or a machine must lift. */
  readonly isTwoPersonLift: boolean;
  /** What it is for and how it was counted. */
  readonly purpose: string;
  /** For wire, to be shown as a gauge or in millimetres; null for everything else. */
  readonly diameter_mm: number | null;
}

/** What the whole, a block or a row costs, as far as it is priced. */
export interface MaterialCost {
  /** Sum of the lines that have a price. */
  readonly price: number;
  /** Lines without one; the sum is whole when this is 0. */
  readonly unpriced: number;
  readonly mass_kg: number;
}

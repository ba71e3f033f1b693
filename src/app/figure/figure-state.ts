import { type Signal, signal } from "@preact/signals";
import { createContext } from "preact";
import { useContext } from "preact/hooks";
import type { Account } from "../../core/account.ts";

/** The number whose account is shown. */
export interface AskedFigure {
  /** Where it stands on the page; the account is shown beside it. */
  readonly element: HTMLElement;
  readonly value: string;
  readonly label: string;
  readonly account: Account;
  /** True when it was asked for by a click or a tap: then it stays until it is sent away. */
  readonly isHeld: boolean;
}

/** Which number is asked about, one at a time on the whole page. */
export interface FigureState {
  readonly asked: Signal<AskedFigure | null>;
}

export function createFigureState(): FigureState {
  return { asked: signal<AskedFigure | null>(null) };
}

export const FigureContext = createContext<FigureState>(createFigureState());

export function useFigures(): FigureState {
  return useContext(FigureContext);
}

/** Id of the one element that shows an account. */
export const accountId = "figure-account";

import type { Account } from "../../core/account.ts";
import { Figure } from "../figure/figure.tsx";

export interface FigureLine {
  readonly name: string;
  readonly value: string;
  readonly how?: string;
  /** null when there is no number yet to tell of. */
  readonly account: (() => Account | null) | null;
}

/** Results of a step, one under another; each tells how it came about. */
export function FigureList({ lines }: { readonly lines: readonly FigureLine[] }) {
  return (
    <dl class="figures">
      {lines.map(({ name, value, how, account }) => (
        <div key={name}>
          <dt>
            {name} {how && <small>{how}</small>}
          </dt>
          <dd>{account ? <Figure value={value} label={name} account={account} /> : value}</dd>
        </div>
      ))}
    </dl>
  );
}

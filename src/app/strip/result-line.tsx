import { Fragment } from "preact";
import type { Account } from "../../core/account.ts";
import { Figure } from "../figure/figure.tsx";

export interface ResultPart {
  readonly value: string;
  readonly label: string;
  readonly account: () => Account | null;
}

/** "21 rows, 1,386 m, 0.42 ha": each part tells on pointing how it came about; the keyboard reaches the same numbers in the open step. */
export function ResultLine({ parts }: { readonly parts: readonly ResultPart[] }) {
  return (
    <>
      {parts.map((part, i) => (
        <Fragment key={part.label}>
          {i > 0 && ", "}
          <Figure {...part} tabIndex={-1} />
        </Fragment>
      ))}
    </>
  );
}

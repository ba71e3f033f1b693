import type { Account } from "../../core/account.ts";
import { braceLengthAccount } from "../../core/trellis/brace-accounts.ts";
import { postDepthAccount, tieAngleAccount, tieWireAccount } from "../../core/trellis/structure-accounts.ts";
import type { BlockTrellis } from "../../core/trellis/trellis.ts";
import { formatQuantity, type QuantityKind } from "../../core/units.ts";
import { useStore } from "../store-context.ts";
import { type FigureLine, FigureList } from "./figure-list.tsx";

/** What follows from how the ends are held: tie-back or brace, how deep the end post stands. */
export function EndFigures({ structure: { end, endPost } }: { readonly structure: BlockTrellis }) {
  const units = useStore().units.value;
  const line = (name: string, kind: QuantityKind, account: Account, how: string): FigureLine => ({
    name,
    how,
    value: formatQuantity(kind, account.value ?? Number.NaN, units),
    account: () => account,
  });
  const { tie, brace } = end;
  return (
    <FigureList
      lines={[
        ...(tie === null
          ? []
          : [
              line("Tie-back", "angle", tieAngleAccount(tie), "from the ground"),
              line("Tie-back wire", "length", tieWireAccount(tie), "for one end, all strands"),
            ]),
        ...(brace === null
          ? []
          : [
              end.kind === "h-brace"
                ? line("Diagonal wire", "length", braceLengthAccount(brace), "one way; it goes there and back")
                : line("Strut", "length", braceLengthAccount(brace), "end post to its foot"),
            ]),
        line("End post in the ground", "length", postDepthAccount(endPost), "straight down"),
      ]}
    />
  );
}

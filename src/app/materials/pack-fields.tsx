import { useStore } from "../store-context.ts";
import { CountField } from "../strip/count-field.tsx";
import { More } from "../strip/more.tsx";
import { QuantityField } from "../strip/quantity-field.tsx";

/** Package sizes where a line names none of its own, and the spares. */
export function PackFields() {
  const materials = useStore().shownPlan.value?.project.materials;
  if (!materials) return null;
  return (
    <>
      <h3>Packages and spares</h3>
      <div class="fields">
        <QuantityField
          label="Coil of wire"
          kind="length"
          value={materials.wireCoils_m[0] ?? 0}
          path="materials.wireCoil"
        />
        <QuantityField
          label="Coil of hose"
          kind="length"
          value={materials.hoseCoils_m[0] ?? 0}
          path="materials.hoseCoil"
        />
        <QuantityField label="Spare vines" kind="ratio" value={materials.vineSpare_ratio} path="materials.vineSpare" />
      </div>
      <More>
        <CountField label="Stake clips in a bag" value={materials.stakeClipBag} path="materials.stakeClipBag" />
        <CountField label="Hose clips in a bag" value={materials.hoseClipBag} path="materials.hoseClipBag" />
        <CountField label="Emitters in a bag" value={materials.emitterBag} path="materials.emitterBag" />
        <CountField label="Staples in a bag" value={materials.stapleBag} path="materials.stapleBag" />
        <QuantityField label="Spare clips" kind="ratio" value={materials.clipSpare_ratio} path="materials.clipSpare" />
        <QuantityField
          label="Spare grippers and sleeves"
          kind="ratio"
          value={materials.gripperSpare_ratio}
          path="materials.gripperSpare"
        />
        <QuantityField
          label="Spare emitters"
          kind="ratio"
          value={materials.emitterSpare_ratio}
          path="materials.emitterSpare"
        />
        <QuantityField
          label="Spare line posts"
          kind="ratio"
          value={materials.linePostSpare_ratio}
          path="materials.linePostSpare"
        />
        <QuantityField
          label="Spare stakes"
          kind="ratio"
          value={materials.stakeSpare_ratio}
          path="materials.stakeSpare"
        />
        <CountField label="Spare end posts" value={materials.endPostSpare} path="materials.endPostSpare" />
      </More>
    </>
  );
}

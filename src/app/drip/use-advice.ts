import { useEffect, useState } from "preact/hooks";
import type { Advice } from "../../core/drip/advice.ts";
import { adviceNumbers, isEnough } from "../../core/drip/advice-numbers.ts";
import type { Watering } from "../../core/drip/watering.ts";
import type { WateringJob } from "../../core/drip/watering-job.ts";
import type { AdviceAnswer, AdviceQuestion } from "./advice-messages.ts";

/** As long as nothing else changes: what is typed is not tried out letter by letter. */
const pause_ms = 300;

/** What would help: being tried out, nothing that the step could think of, or a list. */
type Helps = readonly Advice[] | "asked" | "not needed";

/** What would help where the water falls short, tried out by a worker once nothing changes any more. */
export function useAdvice(job: WateringJob, watering: Watering): Helps {
  const [answered, setAnswered] = useState<{ readonly of: Watering; readonly advice: readonly Advice[] } | null>(null);
  const numbers = adviceNumbers(job, watering);
  const isNeeded = numbers !== null && !isEnough(numbers);
  useEffect(() => {
    if (!isNeeded) return;
    let worker: Worker | null = null;
    const timer = setTimeout(() => {
      worker = new Worker(new URL("./advice-worker.ts", import.meta.url), { type: "module" });
      worker.onmessage = ({ data }: MessageEvent<AdviceAnswer>) => {
        setAnswered({ of: watering, advice: data.advice });
        worker?.terminate();
      };
      // What it breaks on is not asked again.
      worker.onerror = () => setAnswered({ of: watering, advice: [] });
      const question: AdviceQuestion = { job, watering };
      worker.postMessage(question);
    }, pause_ms);
    return () => {
      clearTimeout(timer);
      worker?.terminate();
    };
  }, [job, watering, isNeeded]);
  if (!isNeeded) return "not needed";
  return answered?.of === watering ? answered.advice : "asked";
}

import { describe, expect, test } from "vitest";
import { inTurns, type Turns, turn_ms } from "../../../src/app/hand-over/in-turns.ts";

interface Watched extends Turns {
  /** How long the page was held before each breath. */
  readonly held_ms: number[];
  readonly stop: () => void;
  readonly work: (ms: number) => void;
}

/** A page whose clock goes on by the work that is done. */
function createTurns(): Watched {
  const control = new AbortController();
  const held_ms: number[] = [];
  let [now, begun] = [0, 0];
  return {
    signal: control.signal,
    now_ms: () => now,
    breath: async () => {
      held_ms.push(now - begun);
      begun = now;
    },
    held_ms,
    stop: () => control.abort(),
    work: (ms) => {
      now += ms;
    },
  };
}

function* steps(turns: Watched, count: number, step_ms: number): Generator<number, string, undefined> {
  for (let i = 1; i <= count; i++) {
    turns.work(step_ms);
    yield i;
  }
  return "the end";
}

describe("work in turns", () => {
  test("gives every step and what the work comes to", async () => {
    const turns = createTurns();
    const seen: number[] = [];
    const done = await inTurns(steps(turns, 5, 1), turns, (step) => seen.push(step));
    expect(done).toEqual({ result: "the end" });
    expect(seen).toEqual([1, 2, 3, 4, 5]);
  });

  test("lets the page breathe as soon as it was held for a turn, and never longer than a turn and a step", async () => {
    const turns = createTurns();
    const step_ms = 7;
    await inTurns(steps(turns, 100, step_ms), turns);
    expect(turns.held_ms.length).toBe(Math.floor(100 / Math.ceil(turn_ms / step_ms)));
    for (const held_ms of turns.held_ms) {
      expect(held_ms).toBeGreaterThanOrEqual(turn_ms);
      expect(held_ms).toBeLessThan(turn_ms + step_ms);
    }
  });

  test("rests at the end of every turn, the last one too", async () => {
    const turns = createTurns();
    let [pieces, rests] = [0, 0];
    await inTurns(
      steps(turns, 10, 10),
      turns,
      () => {
        pieces++;
      },
      () => {
        rests += pieces;
        pieces = 0;
      },
    );
    expect(rests).toBe(10);
  });

  test("ends when it is stopped: the work is closed, and nothing comes of it", async () => {
    const turns = createTurns();
    let isClosed = false;
    function* endless(): Generator<number, never, undefined> {
      try {
        for (let i = 0; ; i++) {
          turns.work(10);
          yield i;
        }
      } finally {
        isClosed = true;
      }
    }
    const done = await inTurns(endless(), turns, (step) => {
      if (step === 40) turns.stop();
    });
    expect(done).toBeNull();
    expect(isClosed).toBe(true);
  });

  test("what goes wrong within the work is not hidden", async () => {
    const turns = createTurns();
    function* broken(): Generator<number, never, undefined> {
      yield 1;
      throw new Error("torn");
    }
    await expect(inTurns(broken(), turns)).rejects.toThrow("torn");
  });
});

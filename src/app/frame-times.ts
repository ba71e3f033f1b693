/** Milliseconds between frames, over a number of them; `before` is called in every frame, to keep the page busy. */
export function frameTimes(frames: number, before: (frame: number) => void): Promise<number[]> {
  return new Promise((resolve) => {
    const times: number[] = [];
    const step = (time: number): void => {
      times.push(time);
      if (times.length > frames) {
        resolve(times.slice(1).map((at, i) => at - (times[i] ?? at)));
        return;
      }
      before(times.length);
      requestAnimationFrame(step);
    };
    requestAnimationFrame(step);
  });
}

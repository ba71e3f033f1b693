/** How a page kept answering over a while. */
export interface Watched {
  readonly time_ms: number;
  /** Tasks of the page over 50 ms, in order. */
  readonly longTasks_ms: number[];
  /** Longest time between two frames that the page could have drawn. */
  readonly longestGap_ms: number;
}

/** Watches tasks and frames of the page until it is stopped. */
export function watchPage(): () => Watched {
  const begun = performance.now();
  const endTasks = observeLongTasks();
  let longestGap_ms = 0;
  let last = begun;
  let next = requestAnimationFrame(function frame() {
    const now = performance.now();
    longestGap_ms = Math.max(longestGap_ms, now - last);
    last = now;
    next = requestAnimationFrame(frame);
  });
  return () => {
    cancelAnimationFrame(next);
    const now = performance.now();
    return { time_ms: now - begun, longTasks_ms: endTasks(), longestGap_ms: Math.max(longestGap_ms, now - last) };
  };
}

/** Gathers tasks of the page that take longer than 50 ms, until it is stopped. */
export function observeLongTasks(): () => number[] {
  const tasks_ms: number[] = [];
  const observer = new PerformanceObserver((list) => {
    for (const { duration } of list.getEntries()) tasks_ms.push(duration);
  });
  observer.observe({ type: "longtask" });
  return () => {
    for (const { duration } of observer.takeRecords()) tasks_ms.push(duration);
    observer.disconnect();
    return tasks_ms;
  };
}

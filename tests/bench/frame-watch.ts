/** What was watched on the page between two moments. */
export interface FrameRecord {
  /** From one frame to the next, in ms. */
  readonly gapsMs: readonly number[];
  /** Drawing work in each frame in which the board drew, in ms. */
  readonly workMs: readonly number[];
}

/** Runs in the page: keeps the time of every frame and what the board says it worked. Given as text to the browser, so it holds all it needs. */
export function installFrameWatch(): void {
  const frames: number[] = [];
  const works: { at: number; ms: number }[] = [];
  let watching = false;
  new PerformanceObserver((list) => {
    for (const entry of list.getEntriesByName('board-draw')) {
      if (watching) works.push({ at: entry.startTime, ms: entry.duration });
    }
  }).observe({ entryTypes: ['measure'] });
  const tick = (at: number): void => {
    if (watching) frames.push(at);
    requestAnimationFrame(tick);
  };
  requestAnimationFrame(tick);
  Object.assign(globalThis, {
    frameWatchStart: () => {
      frames.length = 0;
      works.length = 0;
      watching = true;
    },
    frameWatchStop: (): FrameRecord => {
      watching = false;
      const gapsMs = frames.slice(1).map((at, i) => at - (frames[i] as number));
      // Several pieces of drawing work between two frames hold that one frame up together.
      const workMs: number[] = [];
      for (const [i, from] of frames.entries()) {
        const until = frames[i + 1] ?? Number.POSITIVE_INFINITY;
        const inFrame = works.filter(({ at }) => at >= from && at < until);
        if (inFrame.length > 0) workMs.push(inFrame.reduce((sum, { ms }) => sum + ms, 0));
      }
      return { gapsMs, workMs };
    },
  });
}

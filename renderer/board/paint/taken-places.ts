/** The place something takes up on the screen. */
export interface Strip {
  readonly leftPx: number;
  readonly rightPx: number;
  readonly topPx: number;
  readonly bottomPx: number;
}

const cellPx = 96;

/** Keeps what is taken on the screen, in cells, so that asking does not walk it all. */
export function takenPlaces() {
  const cells = new Map<string, Strip[]>();
  function* cellsOf(strip: Strip): Generator<string> {
    for (let x = Math.floor(strip.leftPx / cellPx); x * cellPx <= strip.rightPx; x++) {
      for (let y = Math.floor(strip.topPx / cellPx); y * cellPx <= strip.bottomPx; y++) yield `${x} ${y}`;
    }
  }
  return {
    take: (strip: Strip): void => {
      for (const cell of cellsOf(strip)) {
        const there = cells.get(cell);
        if (there) there.push(strip);
        else cells.set(cell, [strip]);
      }
    },
    isFree: (strip: Strip): boolean => {
      for (const cell of cellsOf(strip)) {
        if (cells.get(cell)?.some((other) => touch(other, strip))) return false;
      }
      return true;
    },
  };
}

const touch = (a: Strip, b: Strip): boolean =>
  a.leftPx < b.rightPx && b.leftPx < a.rightPx && a.topPx < b.bottomPx && b.topPx < a.bottomPx;

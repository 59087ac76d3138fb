/** What one measurement showed, in milliseconds. */
export interface Measured {
  readonly name: string;
  readonly medianMs: number;
  readonly p95Ms: number;
  readonly runs: number;
  /** The figure aimed at, for the median unless the name says otherwise; null where none is set. */
  readonly aimMs: number | null;
}

/** Times `work` until it ran `runs` times; the first two are warm-up and do not count. */
export function measure(
  name: string,
  runs: number,
  aimMs: number | null,
  work: (round: number) => void,
): Measured {
  const times: number[] = [];
  for (let round = -2; round < runs; round++) {
    const started = performance.now();
    work(round);
    if (round >= 0) times.push(performance.now() - started);
  }
  times.sort((a, b) => a - b);
  const at = (share: number): number =>
    times[Math.min(times.length - 1, Math.floor(times.length * share))] ?? 0;
  return { name, medianMs: at(0.5), p95Ms: at(0.95), runs, aimMs };
}

/** One line of the printed table. */
export function tableLine(each: Measured): string {
  const ms = (value: number): string => `${value.toFixed(value < 10 ? 2 : 1)} ms`.padStart(10);
  const aim =
    each.aimMs === null ? '' : `  aim ${each.aimMs} ms${each.medianMs <= each.aimMs ? '' : '  MISSED'}`;
  return `${each.name.padEnd(58)}${ms(each.medianMs)}${ms(each.p95Ms)}${aim}`;
}
